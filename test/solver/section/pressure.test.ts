/** Inviscid flow: published values, an exact section all along its surface, and laws that any panelling must obey. */
import { describe, expect, it } from 'vitest';
import { outlinePoints } from '../../../src/solver/geometry/outline.ts';
import { placePanels } from '../../../src/solver/section/panels.ts';
import {
  forcesFromSpeeds,
  liftFromCirculation,
  liftLine,
  PanelFlow,
} from '../../../src/solver/section/pressure.ts';
import { sectionPressure } from '../../published/section-pressure.ts';
import { KarmanTrefftz, PANELS, RADIANS, speedAtX } from '../../published/sections.ts';
import { runRows } from '../published/run-rows.ts';

describe('published: inviscid sections', () => runRows(sectionPressure));

describe('an exact Karman-Trefftz section, 12 % thick, trailing edge 12 degrees', () => {
  // L. M. Milne-Thomson, Theoretical Aerodynamics, ch. 6: speed in closed form.
  const section = new KarmanTrefftz(0.085, 12);
  const flow = new PanelFlow(placePanels(section.points(241), PANELS));

  for (const alpha of [0, 3, 8])
    it(`surface speed within 0.5 % from 1 % to 98 % of the chord at ${alpha} degrees`, () => {
      const speed = new Float64Array(flow.nodes);
      flow.speeds(alpha * RADIANS, speed);
      let worst = 0;
      for (let x = 0.01; x <= 0.98; x += 0.005) {
        const exact = section.over(x, alpha * RADIANS).speed;
        worst = Math.max(worst, Math.abs(speedAtX(flow, speed, x) / exact - 1));
      }
      expect(worst).toBeLessThan(0.005);
    });

  it('lift slope within 0.1 % for 80 to 240 panels', () => {
    for (const count of [80, 140, 240]) {
      const { slope } = liftLine(new PanelFlow(placePanels(section.points(481), count)));
      expect(Math.abs((slope * 1e-6) / section.lift(1e-6) - 1), `${count} panels`).toBeLessThan(0.001);
    }
  });
});

describe('laws of the inviscid flow', () => {
  const flowOf = (code: string) =>
    new PanelFlow(placePanels(outlinePoints({ kind: 'naca4', code }, 241), PANELS));

  it('lifts the same by circulation and by pressure, sharp edge or blunt', () => {
    for (const code of ['0006', '0012', '4415', '8420']) {
      const flow = flowOf(code);
      const speed = new Float64Array(flow.nodes);
      flow.speeds(4 * RADIANS, speed);
      const { cl } = forcesFromSpeeds(flow.panels, speed, 4 * RADIANS);
      expect(Math.abs(cl / liftFromCirculation(flow, speed) - 1), code).toBeLessThan(0.002);
    }
  });

  it('has no drag: the pressures of a closed section push across the stream only', () => {
    const section = new KarmanTrefftz(0.1, 15);
    const flow = new PanelFlow(placePanels(section.points(241), PANELS));
    const speed = new Float64Array(flow.nodes);
    flow.speeds(6 * RADIANS, speed);
    const across = forcesFromSpeeds(flow.panels, speed, 6 * RADIANS).cl;
    const along = forcesFromSpeeds(flow.panels, speed, 6 * RADIANS - Math.PI / 2).cl; // the force along the stream
    expect(Math.abs(along / across)).toBeLessThan(0.002);
  });

  it('mirrors: the lower side at an angle is the upper side at the opposite one', () => {
    const flow = flowOf('0012');
    const up = new Float64Array(flow.nodes);
    const down = new Float64Array(flow.nodes);
    flow.speeds(0.1, up);
    flow.speeds(-0.1, down);
    for (const [i, value] of up.entries()) expect(value).toBeCloseTo(-down[flow.nodes - 1 - i]!, 8);
  });
});
