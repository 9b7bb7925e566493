/** The view in words: where the eye stands, and what the foil is, for those who do not see the picture. */
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Report } from '../../solver/report.ts';
import { namedView, type Pose } from './camera.ts';

const AROUND = [
  'from ahead',
  'from ahead and starboard',
  'from starboard',
  'from astern and starboard',
  'from astern',
  'from astern and port',
  'from port',
  'from ahead and port',
];

/** "from ahead and port, 20° above". */
export function viewWords(pose: Pose): string {
  const pitch = Math.round((pose.pitch * 180) / Math.PI);
  if (Math.abs(pitch) > 86) return pitch > 0 ? 'from straight above' : 'from straight below';
  const eighth = Math.round((pose.yaw / Math.PI) * 4);
  const side = AROUND[((eighth % 8) + 8) % 8]!;
  const height = pitch === 0 ? 'level' : pitch > 0 ? `${pitch}° above` : `${-pitch}° below`;
  return `${side}, ${height}`;
}

/** The same with the name of the view, where it has one. */
export function viewTitle(pose: Pose): string {
  const named = namedView(pose);
  return named ? `${named.label} (${viewWords(pose)})` : viewWords(pose);
}

/** "seen three-quarter (from ahead and port, 20° above)". */
export function seenWords(pose: Pose): string {
  const title = viewTitle(pose);
  return `seen ${title.charAt(0).toLowerCase()}${title.slice(1)}`;
}

/** View and key figures. */
export function summary(
  pose: Pose,
  design: Design,
  report: Report | null,
  painted: string,
  units: UnitSystem,
): string {
  const length = (value: number) => formatWithUnit(value, 'length', units);
  const parts: string[] = [];
  if (report) {
    const { span, tipDrop } = report.geometry.wing;
    const way = tipDrop < 0 ? 'up' : 'down';
    parts.push(`wing ${length(span)} from tip to tip, tips ${length(Math.abs(tipDrop))} ${way}`);
  }
  parts.push(
    design.stabilizer ? `stabilizer ${length(design.stabilizer.arm)} aft` : 'no stabilizer',
    design.strut ? `strut ${length(design.strut.length)}` : 'no strut',
  );
  return `The foil in three dimensions, ${seenWords(pose)}: ${parts.join(', ')}.${painted && ` ${painted}`}`;
}
