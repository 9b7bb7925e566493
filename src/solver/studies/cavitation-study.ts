/** Where the water first boils and at which speed, strip by strip and at the junctions; lowest pressures as ridden. SI. */
import type { Design } from '../design/document.ts';
import { evenly } from '../numeric/refine.ts';
import { attempt } from './attempt.ts';
import { type Place, type PressurePoint, PressureWatch } from './cavitation.ts';
import { depthAtSpeed } from './condition.ts';
import type { LevelRunner } from './speed.ts';
import { makeRunner } from './speed-study.ts';
import type { Study } from './study.ts';

export interface CavitationStudy {
  /** Where each place first boils in level running, the earliest first; places that do not boil below 40 m/s are left out. */
  inception: Array<{ place: Place; speed: number; eta: number; depth: number }>;
  /** Speed at which each strip boils, along the half length (wetted length of the strut, surface to foot); infinite: later. */
  strips: Array<{ place: 'wing' | 'stabilizer' | 'strut'; eta: number[]; speed: number[] }>;
  pressures: Array<{ name: string; speed: number; worst: PressurePoint | null }>;
}

const PLACES: readonly Place[] = ['wing', 'stabilizer', 'strut', 'wing junction', 'strut junction'];
const PULL_UP = 1.5; // load of a hard take-off pull on the weight (common practice)
const FASTEST = 40; // m/s looked at
const SPEEDS = 24;

export function* cavitationStudy(design: Design): Study<CavitationStudy> {
  const runner = makeRunner(design);
  const watch = new PressureWatch(runner);
  const pressures = lowest(runner, watch, design);
  yield 0.1;
  const strips = boilingStrips(runner, watch, design);
  yield 0.5;
  const inception: CavitationStudy['inception'] = [];
  for (const [k, place] of PLACES.entries()) {
    const found = attempt(() => watch.inceptionSpeed(place, design.brief.speeds.cruise));
    if (found) inception.push({ place, speed: found.speed, eta: found.point.eta, depth: found.point.depth });
    yield 0.5 + (0.5 * (k + 1)) / PLACES.length;
  }
  return { inception: inception.sort((a, b) => a.speed - b.speed), strips, pressures };
}

/** The lowest pressures at a hard take-off pull, at cruise and at top speed. */
function lowest(runner: LevelRunner, watch: PressureWatch, { brief }: Design): CavitationStudy['pressures'] {
  const { takeOff, cruise, top } = brief.speeds;
  const cases = [
    { name: 'take-off pull', speed: takeOff, load: PULL_UP },
    { name: 'cruise', speed: cruise, load: 1 },
    { name: 'top speed', speed: top, load: 1 },
  ];
  return cases.map(({ name, speed, load }) => ({
    name,
    speed,
    worst: attempt(() =>
      watch.worst(runner.run(speed, 'incidence', depthAtSpeed(brief, speed), runner.weight * load)),
    ),
  }));
}

/** From take-off up, the speed at which the margin of each strip vanishes, between speeds by a straight line in 1/V^2. */
function boilingStrips(runner: LevelRunner, watch: PressureWatch, { brief }: Design) {
  const speeds = evenly(brief.speeds.takeOff, FASTEST, SPEEDS);
  const seen = speeds.flatMap((speed) => {
    const points = attempt(() => watch.points(runner.run(speed, 'incidence')));
    return points ? [{ speed, points }] : [];
  });
  return (['wing', 'stabilizer', 'strut'] as const).flatMap((place) => {
    const rows = seen.map(({ speed, points }) => ({
      speed,
      points: points.filter((point) => point.place === place),
    }));
    const etas = rows[0]?.points.map(({ eta }) => eta) ?? [];
    if (etas.length === 0) return [];
    const speed = etas.map((_, i) =>
      crossing(
        rows.map((row) => row.speed),
        rows.map((row) => row.points[i]!.margin),
      ),
    );
    return [{ place, eta: etas, speed }];
  });
}

/** Last speed at which a margin falls through zero: at take-off loads it may be below already and recover. */
function crossing(speeds: readonly number[], margins: readonly number[]): number {
  for (let k = speeds.length - 1; k > 0; k--) {
    const [before, after] = [margins[k - 1]!, margins[k]!];
    if (before < 0 || after > 0) continue;
    const [slow, fast] = [speeds[k - 1]! ** -2, speeds[k]! ** -2];
    return (slow + ((fast - slow) * before) / (before - after)) ** -0.5;
  }
  return Number.POSITIVE_INFINITY;
}
