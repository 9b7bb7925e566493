/** Outlines of the plies laid flat, one inside the other, as they are cut for one side of a surface. Millimetres. */
import type { Skin } from '../solver/geometry/skin.ts';
import type { PlyList } from '../solver/studies/mass.ts';
import { closed, type Drawing, type Label, open, type Path, type Point } from './drawing.ts';
import { capital } from './plan-drawings.ts';

const MM = 1000;
const LETTERS = 2.5; // mm
const MOST_NAMED = 12; // plies whose number is written beside the outline

/** Null where no ply fits. Cut each twice, upper and lower; an allowance for trimming is yours to add. */
export function plySheet(skin: Skin, list: PlyList): Drawing | null {
  const { part, plies, thickness } = list;
  if (plies.length === 0) return null;
  const paths: Path[] = [];
  const labels: Label[] = [];
  for (const { number, reach } of plies) {
    const edge = (key: 'front' | 'rear') =>
      reach.map((at): Point => {
        const rib = skin.rib(at.eta);
        return [rib.distance * MM, (skin.surface.arm - rib.x - (at[key] - 0.25) * rib.chord) * MM];
      });
    const [front, rear] = [edge('front'), edge('rear')];
    const starboard = [...front, ...rear.reverse()];
    const port = starboard
      .slice(1, -1)
      .reverse()
      .map(([x, y]): Point => [-x, y]);
    paths.push(closed('core', [...starboard, ...port]));
    const [x] = front[front.length - 1]!;
    if (number <= MOST_NAMED || number === plies.length)
      labels.push({ at: [x + 1, front[front.length - 1]![1]], height: LETTERS, text: String(number) });
  }
  const root = skin.rib(0);
  paths.push(
    open('reference', [
      [0, (0.25 * root.chord + 0.006) * MM],
      [0, -(0.75 * root.chord + 0.006) * MM],
    ]),
  );
  labels.push({
    at: [-60, -(0.75 * root.chord + 0.014) * MM],
    height: LETTERS,
    text: `${plies.length} plies of ${(thickness * MM).toFixed(2)} mm, 1 outermost; cut each twice, upper and lower side`,
  });
  return {
    name: `${part}-plies`,
    title: `${capital(part)}, plies laid flat: each ends where the section is thinner than the plies outside it`,
    paths,
    labels,
  };
}
