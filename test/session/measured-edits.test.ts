import { describe, expect, it } from 'vitest';
import { measuredAt, withMeasurement, withTipDrop } from '../../src/session/measured-edits.ts';
import { withValueAt } from '../../src/session/paths.ts';
import type { Measured } from '../../src/solver/design/document.ts';
import { readDesignValue } from '../../src/solver/design/read.ts';
import { goodDesign } from '../support/designs.ts';

const NONE: Measured = { at: [] };
const place = { eta: 0.5, side: 'port', key: 'twist' } as const;

describe('measurements', () => {
  it('go in by station in the order of the span, and are found again', () => {
    const outer = withMeasurement(NONE, { ...place, eta: 0.75 }, -1)!;
    const both = withMeasurement(withMeasurement(outer, place, -0.5)!, { ...place, key: 'chord' }, 0.08)!;
    expect(both.at).toEqual([
      { eta: 0.5, port: { twist: -0.5, chord: 0.08 } },
      { eta: 0.75, port: { twist: -1 } },
    ]);
    expect(measuredAt(both, place)).toBe(-0.5);
    expect(measuredAt(both, { ...place, side: 'starboard' })).toBeNull();
    expect(NONE.at).toEqual([]);
  });

  it('taken out leave nothing empty behind, and a document that reads', () => {
    const one = withMeasurement(NONE, place, -0.5)!;
    const two = withMeasurement(one, { ...place, side: 'starboard' }, -0.4)!;
    expect(withMeasurement(two, place, null)).toEqual({ at: [{ eta: 0.5, starboard: { twist: -0.4 } }] });
    expect(withMeasurement(one, place, null)).toBeNull();
    const drops = withTipDrop(withTipDrop(one, 'port', 0.08)!, 'starboard', 0.081)!;
    const left = withTipDrop(drops, 'port', null);
    expect(left).toEqual({ ...one, tipDrop: { starboard: 0.081 } });
    expect(readDesignValue(withValueAt(goodDesign('curved-race'), 'asBuilt.wing', left))).toMatchObject({
      ok: true,
    });
    expect(withTipDrop(withTipDrop(NONE, 'port', 0.08)!, 'port', null)).toBeNull();
  });
});
