/** Where another design stands in a brief: the same figures as the front and the proposal have for it. */
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../../src/solver/design/document.ts';
import { solve } from '../../../../src/solver/solve.ts';
import { standingOf } from '../../../../src/solver/studies/propose/standing.ts';
import { makeRunner } from '../../../../src/solver/studies/speed-study.ts';
import { goodDesign } from '../../../support/designs.ts';

const drawn = goodDesign('curved-race');
const options = { brief: drawn.brief, weights: null, front: [] };

describe('another design in a brief', () => {
  it('has the drag that a run at the brief’s own speed finds, and the hold of a separate solve', () => {
    const found = standingOf(drawn, options)!;
    const { totalDrag } = makeRunner(drawn).run(drawn.brief.speeds.cruise, 'incidence');
    expect(found.drag.cruise! / totalDrag).toBeCloseTo(1, 6);
    expect(found.figures.holdIndex! / solve(drawn).stability.holdIndex!).toBeCloseTo(1, 6);
    // Weights of common use: 0.2, 0.6, 0.2.
    const { takeOff, cruise, top } = found.drag;
    expect(found.weightedDrag).toBeCloseTo(0.2 * takeOff! + 0.6 * cruise! + 0.2 * top!, 9);
  });

  it('is weighed in the brief it is put into, not in its own', () => {
    const heavy: Design = { ...drawn, brief: { ...drawn.brief, allUpMass: 2 * drawn.brief.allUpMass } };
    expect(standingOf(heavy, options)!.drag).toEqual(standingOf(drawn, options)!.drag);
  });

  it('pays what a straight line between two points of the front leaves it above', () => {
    const at = standingOf(drawn, options)!.front!;
    const front = [
      { holdIndex: at.holdIndex - 1, drag: at.drag - 4 },
      { holdIndex: at.holdIndex + 3, drag: at.drag },
    ];
    expect(standingOf(drawn, { ...options, front })!.over).toBeCloseTo(3, 9); // a quarter along from 4 N below
    expect(standingOf(drawn, { ...options, front: front.slice(0, 1) })!.over).toBeNull();
  });

  it('is nowhere where its tips stand out of the water', () => {
    const shallow = { ...options, brief: { ...drawn.brief, depth: 0.005, depths: undefined } };
    const up: Design = { ...drawn, wing: { ...drawn.wing, droop: { kind: 'arc', tipAngle: -30 } } };
    const found = standingOf(up, shallow as never);
    expect(found?.front ?? null).toBeNull();
  });
});
