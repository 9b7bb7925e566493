/** What the printed sheet says in words and figures, workshop units. */
import type { Design } from '../solver/design/document.ts';
import type { Report } from '../solver/report.ts';
import type { PartMass } from '../solver/studies/mass.ts';

export type Entry = readonly [label: string, value: string];

const KNOT = 1852 / 3600; // m/s, exact

export function briefEntries({ brief }: Design): Entry[] {
  const { speeds, water, balance } = brief;
  const knots = (speed: number) => `${(speed / KNOT).toFixed(1)} kn`;
  return [
    ['All-up mass', `${brief.allUpMass.toFixed(0)} kg`],
    ['Carried by the rig', `${(100 * brief.upwardPull).toFixed(0)} %`],
    ['Take-off, cruise, top', `${knots(speeds.takeOff)}, ${knots(speeds.cruise)}, ${knots(speeds.top)}`],
    ['Water', `${water.kind}, ${water.clarity}, ${water.temperature.toFixed(0)} deg C`],
    ['Depth at cruise', brief.depth === null ? 'deep' : mm(brief.depth)],
    ['Balance point', `${mm(balance.x)} aft, ${mm(balance.height)} up`],
  ];
}

export function figureEntries(design: Design, report: Report): Entry[] {
  const { geometry, ledger, inducedDrag, lift, stability, condition } = report;
  const { wing, stabilizer } = geometry;
  const entries: Entry[] = [
    ['Wing span, length of the curve', `${mm(wing.span)}, ${mm(wing.unrolledLength)}`],
    ['Wing area, projected', cm2(wing.projectedArea)],
    ['Wing tip drop', mm(wing.tipDrop)],
    ['Wing incidence', degrees(design.wing.incidence)],
  ];
  if (stabilizer && design.stabilizer)
    entries.push(
      ['Stabilizer span', mm(stabilizer.span)],
      ['Stabilizer area, projected', cm2(stabilizer.projectedArea)],
      ['Stabilizer arm, height', `${mm(design.stabilizer.arm)}, ${mm(design.stabilizer.height)}`],
      ['Stabilizer incidence', degrees(design.stabilizer.incidence)],
    );
  entries.push(
    ['Angle at cruise', degrees(condition.alpha)],
    ['Lift coefficient', lift.CL.toFixed(3)],
    ['Induced drag', `${inducedDrag.farField.toFixed(2)} N`],
    [
      'Lost to the curve',
      ledger.lostFraction === null ? 'none' : `${(100 * ledger.lostFraction).toFixed(2)} %`,
    ],
    ['Hold index', stability.holdIndex === null ? 'none' : stability.holdIndex.toFixed(2)],
    ['Neutral point, aft', mm(stability.neutralPoint)],
    ['Static margin', `${(100 * stability.staticMargin).toFixed(0)} %`],
  );
  return entries;
}

export function massEntries(masses: readonly PartMass[]): Entry[] {
  const grams = (mass: number) => `${(1000 * mass).toFixed(0)} g`;
  const total = masses.reduce((sum, { mass }) => sum + mass, 0);
  const resin = masses.reduce((sum, part) => sum + (part.resin ?? 0), 0);
  return [
    ...masses.map(
      ({ part, mass, build }): Entry => [
        `${part.charAt(0).toUpperCase()}${part.slice(1)}, ${build}`,
        grams(mass),
      ],
    ),
    ['Together', grams(total)],
    ['Resin to mix', grams(resin)],
  ];
}

function mm(length: number): string {
  return `${(1000 * length).toFixed(1)} mm`;
}

function cm2(area: number): string {
  return `${(1e4 * area).toFixed(1)} cm2`;
}

function degrees(angle: number): string {
  return `${angle.toFixed(2)} deg`;
}
