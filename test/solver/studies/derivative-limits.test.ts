/**
 * Lateral derivatives where they have closed forms (strip theory of very long wings, worked beside each), and what must
 * hold by symmetry whatever the shape.
 */
import { describe, expect, it, vi } from 'vitest';
import type { Design, DroopLaw, Planform } from '../../../src/solver/design/document.ts';
import { craftOf } from '../../../src/solver/geometry/craft.ts';
import type { Derivatives } from '../../../src/solver/report.ts';
import { solve } from '../../../src/solver/solve.ts';
import { expectClose } from '../../support/close.ts';
import {
  ellipticChord,
  goodDesigns,
  plainDesign,
  plainStabilizer,
  taperedChord,
} from '../../support/designs.ts';
import { fullSystem } from '../vortex/full-system.ts';

vi.setConfig({ testTimeout: 60_000 }); // polars are made once, more slowly on a busy machine

const LONG = 1000; // aspect ratio at which the strips of a wing do not feel one another
const DEGREE = Math.PI / 180;
const foilOf = (design: Design, alpha: number) => {
  const report = solve(design, { alpha, strips: 60, neutralDroop: false, sections: 'thin' });
  return { ...report.stability.foil, CL: report.lift.CL };
};
const vee = (tipAngle: number): DroopLaw => ({ kind: 'vee', tipAngle });

describe('strip theory of very long wings, section slope 2 pi', () => {
  it('roll from yaw of an untapered flat wing is CL/6, along its own axes', () => {
    // the angle held in the wing's own axes, a strip at y meets V - r y: dL = -rho r y G dy, G the same everywhere;
    // l = rho r G b^3/12 over q S b and r b/2V, with CL q S = rho V G b
    const { Clr, CL } = foilOf(plainDesign({ chord: taperedChord(LONG, 1) }), 4);
    expectClose('C_lr/CL', Clr / CL, 1 / 6, { share: 0.01 });
  });

  it('yaw from roll of an untapered flat wing is -CL/3: leading-edge force goes with the square of the normal speed', () => {
    // F_x = -rho G w with G = pi c w: dF_x = -2 rho G p y at a strip rolling with p; moment rho G p b^3/6
    const { Cnp, CL } = foilOf(plainDesign({ chord: taperedChord(LONG, 1) }), 4);
    expectClose('C_np/CL', Cnp / CL, -1 / 3, { share: 0.02 });
  });

  it('roll damping of an elliptic wing is -pi/4, with the quarter of the chord times y squared', () => {
    // 2 pi integral(c y^2 dy) 2/(S b^2): c = c0 sqrt(1 - (2y/b)^2) gives c0 pi b^3/64, S = pi b c0/4
    const { Clp } = foilOf(plainDesign({ chord: ellipticChord(LONG) }), 0);
    expectClose('C_lp', Clp, -Math.PI / 4, { share: 0.02 });
  });

  it.each([5, 15, 30])('a vee of %i degrees down without lift, untapered', (angle) => {
    // a strip meets V beta sin G (slip) and p y/cos G (roll, y/cos G its place along the line); its force 2 pi q c times
    // that angle stands on it: CY takes sin G of it, l its whole arm y/cos G; area and span are the projected ones
    const { CYbeta, Clbeta, Clp } = foilOf(
      plainDesign({ chord: taperedChord(LONG, 1), droop: vee(angle) }),
      0,
    );
    const [s, c] = [Math.sin(angle * DEGREE), Math.cos(angle * DEGREE)];
    expectClose('C_Ybeta', CYbeta, (-2 * Math.PI * s * s) / c, { share: 0.02 });
    expectClose('C_lbeta', Clbeta, (Math.PI / 2) * (s / c ** 2), { share: 0.02 });
    expectClose('C_lp', Clp, -Math.PI / 3 / c ** 3, { share: 0.02 });
  });

  it('a short steep stabilizer far behind turns the foil as a fin would: its side force on its arm', () => {
    // CY and Cn of the stabilizer alone, on the wing's area and span: Cn_beta = -CY_beta l/b, C_nr = 2 CY_beta (l/b)^2
    const arm = 3;
    const shape = { droop: vee(60), length: { kind: 'unrolled', value: 0.2 } } as const;
    const chord = { kind: 'taper', root: 1e-3, tip: 1e-3 } as const;
    const stabilizer = plainStabilizer({ ...shape, chord, arm });
    const design = plainDesign({ chord: { kind: 'taper', root: 1e-4, tip: 1e-4 } }, { stabilizer });
    const { CYbeta, Cnbeta, Cnr, CYr } = foilOf(design, 0);
    expectClose('C_nbeta', Cnbeta, -CYbeta * arm, { share: 0.002 });
    expectClose('C_Yr', CYr, -2 * CYbeta * arm, { share: 0.002 });
    expectClose('C_nr', Cnr, 2 * CYbeta * arm * arm, { share: 0.002 });
  });
});

/** Which derivatives turn their sign when a design is turned upside down: those that mix roll with sway or yaw. */
const TURNS: ReadonlyArray<keyof Derivatives> = ['Clbeta', 'CYp', 'Cnp', 'Clr'];
const KEYS: ReadonlyArray<keyof Derivatives> = [
  'CYbeta',
  'Clbeta',
  'Cnbeta',
  'CYp',
  'Clp',
  'Cnp',
  'CYr',
  'Clr',
  'Cnr',
];

describe('symmetry', () => {
  const upsideDown = <P extends Planform>(planform: P): P => ({
    ...planform,
    droop: vee('tipAngle' in planform.droop ? -(planform.droop.tipAngle ?? 0) : 0),
    twist: { kind: 'linear', tip: 'tip' in planform.twist ? -planform.twist.tip : 0 },
    incidence: -planform.incidence,
  });

  it.each([0, 3])(
    'upside down in deep water only what mixes roll with sway or yaw turns its sign, alpha %i',
    (alpha) => {
      const wing = plainDesign({
        chord: taperedChord(9, 0.5),
        sweep: { kind: 'straight', angle: 12 },
        twist: { kind: 'linear', tip: -2 },
        droop: vee(18),
        incidence: 1,
      });
      const stabilizer = plainStabilizer({ droop: vee(-25), height: 0.05, incidence: -1.5 });
      const upright = { ...wing, stabilizer };
      const turned = {
        ...wing,
        wing: upsideDown(wing.wing),
        stabilizer: { ...upsideDown(stabilizer), height: -0.05 },
      };
      const [one, other] = [foilOf(upright, alpha), foilOf(turned, -alpha)];
      for (const key of KEYS) {
        const sign = TURNS.includes(key) ? -1 : 1;
        expectClose(key, other[key], sign * one[key], { within: 1e-9 });
      }
      expect(Math.abs(one.Clbeta)).toBeGreaterThan(0.01);
    },
  );

  it('droop turned into dihedral turns the sign of roll from slip without lift, and droop rolls it into the slip', () => {
    const at = (angle: number) => foilOf(plainDesign({ chord: taperedChord(8, 0.5), droop: vee(angle) }), 0);
    expect(at(12).Clbeta).toBeGreaterThan(0);
    expectClose('C_lbeta', at(-12).Clbeta, -at(12).Clbeta, { share: 1e-9 });
  });

  it.each(goodDesigns())(
    '%s: seen in a mirror it slips, rolls and turns the other way by as much',
    (_name, design) => {
      const craft = craftOf(design, design.brief.depth, { strips: 12, stabilizerStrips: 6, rows: 1 });
      const { x, height } = design.brief.balance;
      const full = fullSystem(craft, true);
      for (const cause of ['beta', 'p', 'r'] as const) {
        const about: [number, number, number] = [x, 0, height];
        const [more, less] = [0.05, -0.05].map((value) =>
          full.solve({ alpha: 0.05, [cause]: value, about }),
        ) as [ReturnType<typeof full.solve>, ReturnType<typeof full.solve>];
        const within = 1e-9;
        expectClose('side force', more.force[1], -less.force[1], { within });
        expectClose('roll', more.moment[0], -less.moment[0], { within });
        expectClose('yaw', more.moment[2], -less.moment[2], { within });
        expectClose('drag', more.force[0], less.force[0], { within });
        expectClose('lift', more.force[2], less.force[2], { within });
        expectClose('pitch', more.moment[1], less.moment[1], { within });
      }
    },
  );

  it('lateral derivatives keep their convention: a flat wing damps roll, a stabilizer and droop point the nose into the slip', () => {
    const flat = foilOf(plainDesign({ chord: taperedChord(8, 0.5) }), 3);
    expect(flat.Clp).toBeLessThan(0);
    expect(flat.Clr).toBeGreaterThan(0); // the wing on the outside of a turn to starboard is the port one: it lifts more
    expect(flat.Cnp).toBeLessThan(0);
    const tailed = foilOf(plainDesign({}, { stabilizer: plainStabilizer({ droop: vee(30) }) }), 0);
    expect(tailed.CYbeta).toBeLessThan(0); // water from starboard pushes to port
    expect(tailed.Cnbeta).toBeGreaterThan(0);
    expect(tailed.Cnr).toBeLessThan(0);
  });
});
