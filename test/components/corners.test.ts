import { expect } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { type Corner, lineText, mirrored, sparse } from '../../src/components/corners.ts';

const SEEN = 0.1; // px

/** How far a corner stands from the nearest stretch of a line, found by trying places along it. */
function away({ x, y }: Corner, line: readonly Corner[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < line.length; k++)
    for (let t = 0; t <= 1; t += 1 / 512) {
      const [from, to] = [line[k - 1]!, line[k]!];
      least = Math.min(least, Math.hypot(from.x + t * (to.x - from.x) - x, from.y + t * (to.y - from.y) - y));
    }
  return least;
}

describe('corners of a drawn line', () => {
  it('are as few on a circle as its sagitta allows, and none is missed by more than can be seen', () => {
    const RADIUS = 400;
    const arc = Array.from({ length: 401 }, (_, k) => {
      const angle = (Math.PI / 3) * (k / 400);
      return { x: RADIUS * Math.sin(angle), y: RADIUS * Math.cos(angle) };
    });
    const kept = sparse(arc);
    // A chord over the angle 2a of a circle stands R (1 - cos a) from it (the sagitta of any table of circle segments).
    const widest = 2 * Math.acos(1 - SEEN / RADIUS);
    const fewest = Math.ceil(Math.PI / 3 / widest);
    expect(kept.length - 1).to.be.within(fewest, fewest + 2);
    for (const corner of arc) expect(away(corner, kept)).to.be.below(SEEN + 0.02);
    expect(kept[0]).to.equal(arc[0]);
    expect(kept.at(-1)).to.equal(arc.at(-1));
  });

  it('stay where the line turns, even back on itself', () => {
    const at = (x: number, y: number): Corner => ({ x, y });
    const straight = [at(0, 0), at(1, 0.05), at(2, 0), at(40, 0)];
    expect(sparse(straight)).to.deep.equal([at(0, 0), at(40, 0)]);
    const kink = [at(0, 0), at(10, 0), at(20, 0), at(20, 5), at(20, 10)];
    expect(sparse(kink)).to.deep.equal([at(0, 0), at(20, 0), at(20, 10)]);
    const back = [at(0, 0), at(10, 0), at(20, 0), at(5, 0)];
    expect(sparse(back)).to.deep.equal([at(0, 0), at(20, 0), at(5, 0)]);
    expect(sparse([at(3, 4)])).to.deep.equal([at(3, 4)]);
    expect(sparse([])).to.deep.equal([]);
  });

  it('are mirrored and written', () => {
    const line = [
      { x: 10, y: 1 },
      { x: 12.34, y: 2 },
    ];
    expect(lineText(mirrored(line, 10))).to.equal('10.0 1.0L7.7 2.0');
  });
});
