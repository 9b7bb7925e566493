/** As built: the extra right-hand side against both sides in one system, signs, and what the tolerance means. */
import { describe, expect, it, vi } from 'vitest';
import type { Design, Measured } from '../../src/solver/design/document.ts';
import { asBuilt } from '../../src/solver/studies/as-built.ts';
import { buildChecks } from '../../src/solver/studies/build-checks.ts';
import { partMasses, plyList } from '../../src/solver/studies/mass.ts';
import { foilOf } from '../../src/workshop/order.ts';
import { goodDesign } from '../support/designs.ts';

vi.setConfig({ testTimeout: 60_000 });

const stations = [0, 0.25, 0.5, 0.75, 1];

function measured(name: string, wing: Measured) {
  return asBuilt({ ...goodDesign(name), asBuilt: { wing } }, { stations });
}

describe('as built', () => {
  it.each(['curved-race', 'downwind', 'gull-lake'])(
    '%s: one more right-hand side agrees with both sides in one system',
    (name) => {
      const drawn = goodDesign(name).wing.twist;
      expect(drawn.kind).toBeDefined();
      const result = measured(name, {
        at: [{ eta: 0.6, starboard: { twist: -0.4 }, port: { twist: -0.8 } }],
      });
      expect(result.roll).toBeCloseTo(result.byTwistLinear, 2);
      expect(result.roll).toBeLessThan(-0.5); // starboard nose up lifts starboard: it rolls starboard up
      expect(result.lean).toBeGreaterThan(0);
      expect(result.shim).toBeLessThan(0);
    },
  );

  // Starboard lifts more: the wake between the halves turns down to starboard and up to port, so above the wing water
  // crosses to starboard (right-hand rule) and pushes the strut that way: a moment starboard down.
  it('the strut holds against the roll, in one system and by one more right-hand side', () => {
    const wing: Measured = { at: [{ eta: 0.6, starboard: { twist: -0.4 }, port: { twist: -0.8 } }] };
    const whole = measured('curved-race', wing);
    const bare = asBuilt({ ...goodDesign('curved-race'), strut: null, asBuilt: { wing } }, { stations });
    const byStrut = whole.roll - bare.roll;
    expect(byStrut).toBeGreaterThan(0.02 * Math.abs(bare.roll));
    expect((whole.byTwistLinear - bare.byTwistLinear) / byStrut).toBeCloseTo(1, 2);
  });

  it('turning the halves by the shim takes the roll away', () => {
    const wing: Measured = { at: [{ eta: 0.6, starboard: { twist: -0.4 }, port: { twist: -0.8 } }] };
    const first = measured('curved-race', wing);
    const shimmed = measured('curved-race', {
      at: [0, 0.6, 1].map((eta) => {
        const linear = -1.2 * eta; // the drawn twist of this design
        const error =
          eta === 0.6 ? { starboard: -0.4 - linear, port: -0.8 - linear } : { starboard: 0, port: 0 };
        const beyond = eta === 1 ? { starboard: -0.4 + 0.72, port: -0.8 + 0.72 } : error;
        return {
          eta,
          starboard: { twist: linear + beyond.starboard + first.shim! },
          port: { twist: linear + beyond.port - first.shim! },
        };
      }),
    });
    expect(Math.abs(shimmed.roll)).toBeLessThan(0.01 * Math.abs(first.roll));
  });

  it('a difference as large as a station’s tolerance rolls the foil by 1 N m', () => {
    const { stations: list } = measured('curved-race', { at: [] });
    const { tolerance } = list[2]!;
    const twist = (eta: number, by: number) => -1.2 * eta + by;
    const result = measured('curved-race', {
      at: [0.25, 0.5, 0.75].map((eta) => ({
        eta,
        starboard: { twist: twist(eta, eta === 0.5 ? tolerance! : 0) },
        port: { twist: twist(eta, 0) },
      })),
    });
    expect(Math.abs(result.roll)).toBeCloseTo(1, 2);
  });

  it('a wider starboard half lifts starboard; even sides roll nothing', () => {
    expect(
      measured('flat-race', { at: [{ eta: 0.5, starboard: { chord: 0.09 }, port: { chord: 0.088 } }] }).roll,
    ).toBeLessThan(0);
    expect(
      Math.abs(
        measured('flat-race', { at: [{ eta: 0.5, starboard: { chord: 0.09 }, port: { chord: 0.09 } }] }).roll,
      ),
    ).toBeLessThan(1e-6);
  });

  it('sets the built wing beside the drawn one', () => {
    const { compared } = measured('curved-race', { at: [], tipDrop: { port: 0.08, starboard: 0.084 } });
    const drop = compared.find(({ name }) => name === 'Tip drop')!;
    expect(drop.built).toBeCloseTo(0.082, 4);
    expect(drop.built).toBeGreaterThan(drop.drawn);
  });
});

describe('mass and plies', () => {
  it('a solid wing weighs its volume; plies laid up fill it', () => {
    const design = goodDesign('curved-race');
    const { wing } = foilOf(design);
    const [mass] = partMasses(design, wing, null);
    const list = plyList(design, 'wing', wing);
    const filled = list.cloth * list.thickness;
    const volume = mass!.mass / 1600; // kg/m3 of the standard laminate
    expect(filled / volume).toBeGreaterThan(0.93); // whole plies only: a thin rest stays
    expect(filled / volume).toBeLessThan(1);
    for (let k = 1; k < list.plies.length; k++)
      expect(list.plies[k]!.area).toBeLessThan(list.plies[k - 1]!.area);
  });

  it('a shell is lighter than a solid by what the foam is lighter', () => {
    const design = goodDesign('curved-race');
    const { wing } = foilOf(design);
    const shell = { ...design, laminate: { wing: { build: 'shell' as const, skin: 0.001 } } };
    const [solid, light] = [design, shell].map((each) => partMasses(each, wing, null)[0]!);
    expect(light!.skinMass / 1600 + light!.coreMass / 80).toBeCloseTo(solid!.mass / 1600, 9);
    expect(light!.mass).toBeLessThan(solid!.mass);
  });
});

describe('checks before export', () => {
  const kinds = (name: string, changes = {}) => {
    const design = { ...goodDesign(name), ...changes };
    return buildChecks(design, foilOf(design), { draw: 'fitted' }).map(
      ({ part, kind, message }) => `${part} ${kind}: ${message}`,
    );
  };

  it('name thin edges and pointed tips with the place', () => {
    expect(kinds('curved-race')).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^wing edge: .*mm out along the curve/),
        expect.stringMatching(/^wing tip: Tip chord 0\.0 mm/),
      ]),
    );
    expect(kinds('curved-race', { build: { leastEdge: 0.0005 } }).join()).not.toContain('edge:');
  });

  it('measure what closed forms give: the trailing edge of the series, the radius of an arc', () => {
    const section = { kind: 'naca4' as const, code: '0012' };
    const wing: Design['wing'] = {
      ...goodDesign('flat-race').wing,
      length: { kind: 'unrolled', value: 0.8 },
      chord: { kind: 'taper', root: 0.1, tip: 0.1 },
      droop: { kind: 'arc', tipAngle: 40 },
      section: { root: section, tip: section },
    };
    const found = kinds('flat-race', { wing, build: { stock: 0.02 } }).join();
    // Thickness at the end of the four-digit series: 10 t (0.2969 - 0.1260 - 0.3516 + 0.2843 - 0.1015), NACA Report 460.
    const edge = 10 * 0.12 * (0.2969 - 0.126 - 0.3516 + 0.2843 - 0.1015) * 100;
    expect(found).toContain(`Trailing edge down to ${edge.toFixed(2)} mm`);
    // 400 mm of curve turn through 40 degrees; strain of a sheet bent to radius R is half its thickness over R.
    expect(found).toContain(`Bent to a radius of ${(400 / ((40 * Math.PI) / 180)).toFixed(0)} mm`);
    expect(found).toContain(`stock of 20.0 mm bends to ${(20 / 2 / 0.01).toFixed(0)} mm`);
  });

  it('name a broken curve, stock too thick to bend, and skin that a mould holds', () => {
    expect(kinds('gull-lake').join()).toMatch(
      /wing bend: The curve is broken at the centre by 14\.0 degrees/,
    );
    expect(kinds('curved-race', { build: { stock: 0.03 } }).join()).toMatch(/wing bend: Bent to a radius of/);
    expect(kinds('flat-race').join()).not.toContain('wing undercut');
    expect(kinds('curved-race').join()).toMatch(
      /wing undercut: A mould parted flat .* along the edges it comes off/,
    );
    const design = goodDesign('curved-race');
    const along = buildChecks(design, foilOf(design), { draw: 'edges' });
    expect(along.filter(({ kind }) => kind === 'undercut')).toEqual([]);
  });
});
