import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { skinView } from '../../../src/solver/studies/skin-study.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { transitionMap } from '../../../src/solver/studies/transition-map.ts';
import curved from '../../../web/demos/curved-race.json' with { type: 'json' };

const demo = curved as Design;
const SLOW = { timeout: 60_000 };
const speed = demo.brief.speeds.cruise;

describe('transition along the span', SLOW, () => {
  const map = finish(transitionMap(demo, { speed }));

  it('is what the section of a station says, wing and stabilizer', () => {
    for (const part of ['wing', 'stabilizer'] as const) {
      const station = map[part][4]!;
      const view = skinView(demo, { part, eta: station.eta, speed });
      expect(station.upper).toBe(view.upper.transition);
      expect(station.lower).toBe(view.lower.transition);
      expect(station.reynolds).toBe(view.station.reynolds);
    }
  });

  it('counts as laminar what lies ahead of it, by area', () => {
    // The wing's area and its laminar part once more, in narrow slices with straight lines between the stations.
    let [laminar, all] = [0, 0];
    const { wing } = map;
    for (let k = 1; k < wing.length; k++)
      for (let n = 0; n < 200; n++) {
        const t = (n + 0.5) / 200;
        const [a, b] = [wing[k - 1]!, wing[k]!];
        const between = (of: (s: typeof a) => number) => of(a) + (of(b) - of(a)) * t;
        const slice = ((b.eta - a.eta) / 200) * between(({ chord }) => chord);
        all += 2 * slice;
        laminar += slice * between(({ upper, lower }) => upper! + lower!);
      }
    expect(map.laminarShare.wing).toBeCloseTo(laminar / all, 2); // a product of two lines by its ends
    expect(map.laminarShare.wing).toBeGreaterThan(0);
    expect(map.laminarShare.wing).toBeLessThan(1);
  });

  it('of a foil without a stabilizer is the wing’s alone', () => {
    const alone = finish(transitionMap({ ...demo, stabilizer: null }, { speed }));
    expect(alone.stabilizer).toEqual([]);
    expect(alone.laminarShare.stabilizer).toBeNull();
  });

  it('says why where the foil does not run level', () => {
    expect(() => finish(transitionMap(demo, { speed: 0.5 }))).toThrow();
  });
});
