/** What the Curve panel asks: the sweep with its price, the method's band, sections compared. */
import { describe, expect, it, vi } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { scaledChord } from '../../../src/solver/geometry/scale.ts';
import { solve } from '../../../src/solver/solve.ts';
import { curveStudy } from '../../../src/solver/studies/curve-study.ts';
import { droopStudy } from '../../../src/solver/studies/droop-study.ts';
import { priceOf } from '../../../src/solver/studies/price.ts';
import { priceBand } from '../../../src/solver/studies/price-band.ts';
import { compareSections } from '../../../src/solver/studies/section-choice.ts';
import { makeRunner } from '../../../src/solver/studies/speed-study.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { takeOff } from '../../../src/solver/studies/take-off.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign } from '../../support/designs.ts';

vi.setConfig({ testTimeout: 60_000 }); // sections no cache has met are made ready first

const RADIANS = Math.PI / 180;

describe('curve study', () => {
  it('carries the index to another speed: it is the report’s at that speed, lift and depth the same', () => {
    const design = goodDesign('curved-race');
    const { coupling, sweep } = finish(curveStudy(design, { count: 3, to: 24 }));
    const top = coupling.at(-1)!;
    const wing = { ...design.wing, droop: { kind: 'arc', tipAngle: 24 } } as const;
    const condition = { speed: top.speed, depth: design.brief.depth, neutralDroop: false };
    const report = solve({ ...design, wing }, condition);
    expectClose('index', top.index[2]!, report.stability.holdIndex!, { share: 2e-3 }); // C_L by alpha moves by a hair
    expectClose('C_lr', top.Clr[2]!, report.stability.foil.Clr, { within: 1e-6 });
    expect(sweep.columns.amplitude[2]).toBeCloseTo(24, 9);
  });

  it('reads the index at its own neutral droop, between the columns', () => {
    const { coupling, sweep } = finish(curveStudy(goodDesign('curved-race'), { count: 41, to: 60 }));
    const { neutral, neutralIndex, index } = coupling.find(({ speed }) => speed === sweep.speed)!;
    const k = sweep.columns.amplitude.findIndex((at) => at > neutral!);
    expect(neutralIndex!).toBeGreaterThan(index[k - 1]!);
    expect(neutralIndex!).toBeLessThan(index[k]!);
  });

  it('behind a flat stabilizer sets the roll term against the coupling', () => {
    const design = goodDesign('curved-race');
    const bare = { ...design, stabilizer: { ...design.stabilizer!, droop: { kind: 'flat' } } } as Design;
    const { indexKind, coupling } = finish(curveStudy(bare, { count: 5, to: 40 }));
    expect(indexKind).toBe('rollTerm');
    expect(coupling[0]!.index[4]!).toBeGreaterThan(0);
  });
});

describe('the method’s band on the price', () => {
  it('is what four rows of vortices move the places by, on the same strips', () => {
    const design = goodDesign('curved-race');
    const options = { kept: 'unrolled', to: 60, perPoint: 0.003 } as const;
    const band = finish(priceBand(design, options));
    const at = (rows: number) => {
      const condition = { strips: 24, stabilizerStrips: 12, rows };
      return priceOf(finish(droopStudy(design, { to: 60, count: 13, condition })), options);
    };
    const [line, surface] = [at(1), at(4)];
    expectClose('place', band.place!, surface.place.at! - line.place.at!, { within: 1e-9 });
    expectClose('neutral', band.neutral!, surface.neutral! - line.neutral!, { within: 1e-9 });
    // Roll damping and lift slope of line and surface differ by a few percent at this aspect ratio (physics of the method).
    expect(Math.abs(band.neutral!)).toBeLessThan(0.1 * line.neutral!);
  });
});

describe('sections compared', () => {
  const compared = (codes: string[], design = goodDesign('flat-race')) =>
    finish(compareSections(design, { codes })).choices.map((choice) => {
      if (!choice.found) throw new Error(choice.problem);
      return choice;
    });

  it('lift off at the brief’s speed: Speed finds that take-off on the wing with its chords by the factor', () => {
    const design = goodDesign('flat-race');
    const [own] = compared(['2411']);
    const outline = { kind: 'naca4', code: '2411' } as const;
    const chord = scaledChord(design.wing.chord, own!.found.chordFactor);
    const sized = { ...design, wing: { ...design.wing, chord, section: { root: outline, tip: outline } } };
    const lifted = takeOff(makeRunner, sized)!;
    expectClose('take-off', lifted.speed, design.brief.speeds.takeOff, { share: 1e-3 });
    expectClose('usable CL', own!.found.usableCL, lifted.CLwing, { share: 2e-3 });
  });

  it('at one lift a wing alone has the same coupling along the stream whatever its section (linear theory)', () => {
    const all = compared(['0011', '2411', '6411']);
    const [first] = all;
    for (const { coupling } of all)
      expectClose('C_lr', coupling.wingStream, first!.coupling.wingStream, { share: 0.03 }); // real lift slopes differ a little
  });

  it('about the foil’s own axes it differs by the angle times the roll damping', () => {
    // rates and moments turned from one pair of axes to the other: dC_lr = -C_lp dalpha to first order
    const alone = { ...goodDesign('flat-race'), stabilizer: null };
    const section = (code: string) => ({ kind: 'naca4', code }) as const;
    const figures = ['1411', '4411'].map((code) => {
      const wing = { ...alone.wing, section: { root: section(code), tip: section(code) } };
      return solve({ ...alone, wing }, { neutralDroop: false });
    });
    const [thin, bent] = figures as [(typeof figures)[0], (typeof figures)[0]];
    const turned = (thin.condition.alpha - bent.condition.alpha) * RADIANS * -thin.stability.foil.Clp;
    expectClose('C_lr', bent.stability.foil.Clr - thin.stability.foil.Clr, turned, { share: 0.03 });
    const [a, b] = compared(['1411', '4411'], alone);
    expectClose('own', b!.coupling.own - a!.coupling.own, turned, { share: 0.03 });
  });

  it('camber is paid for: a greater nose-down moment, an earlier inception, a flatter fuselage', () => {
    const [little, much] = compared(['1411', '4411']);
    expect(much!.found.noseDown).toBeGreaterThan(2 * little!.found.noseDown);
    expect(much!.found.stabilizerLift!).toBeLessThan(little!.found.stabilizerLift!);
    expect(much!.found.alphaCruise).toBeLessThan(little!.found.alphaCruise);
    expect(much!.found.inception!).toBeLessThan(little!.found.inception!);
  });

  it('says so when no chord does it', () => {
    const design = goodDesign('flat-race');
    const slow = { ...design, brief: { ...design.brief, speeds: { ...design.brief.speeds, takeOff: 0.6 } } };
    expect(finish(compareSections(slow, { codes: ['2411'] })).choices[0]!.problem).toMatch(/no chord from/);
  });
});
