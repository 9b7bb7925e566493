/** The spread of lift: forces strip by strip at the condition, starboard half, root to tip. */
import type { Craft } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';
import type { StripFigures } from '../report.ts';
import type { Flow } from '../vortex/flow.ts';
import type { LeastDrag } from '../vortex/wake.ts';
import type { Stream } from './drag-sources.ts';
import type { LiftingPart, ProfileModel } from './profile.ts';

/**
 * Strip figures from the flow's `base` mix (stream speed 1) and its gathered strip circulations.
 * The least-drag loading is scaled to the wing's vertical lift.
 */
export function stripFigures(
  craft: Craft,
  flow: Flow,
  stream: Stream,
  least: LeastDrag,
  profile: ProfileModel,
): { wing: StripFigures[]; stabilizer: StripFigures[] } {
  const { wing: wingParts, stabilizer: stabilizerParts } = craft.parts;
  const wing = stripsOf(wingParts, flow, 0, 0, stream, 'wing', profile);
  const lift = wing.reduce((sum, strip) => sum + 2 * strip.forceZ, 0);
  const scale = lift / (2 * stream.density * stream.speed * least.measure);
  wing.forEach((strip, k) => {
    strip.leastCirculation = least.circulation[k]! * scale;
  });
  const stabilizer = stabilizerParts
    ? stripsOf(
        stabilizerParts,
        flow,
        wingParts.count,
        flow.system.wingSegments,
        stream,
        'stabilizer',
        profile,
      )
    : [];
  return { wing, stabilizer };
}

function stripsOf(
  parts: Strips,
  flow: Flow,
  firstStrip: number,
  firstSegment: number,
  { speed, density, viscosity }: Stream,
  part: LiftingPart,
  profile: ProfileModel,
): StripFigures[] {
  const { alongX, alongY, alongZ, controlY, controlZ } = flow.system;
  const { x, y, z } = flow.base.field;
  const pressure = density * speed * speed;
  return Array.from({ length: parts.count }, (_, k) => {
    let forceY = 0;
    let forceZ = 0;
    for (let r = 0; r < parts.rows; r++) {
      const i = firstSegment + r * parts.count + k;
      const circulation = flow.base.circulation[i]! * pressure;
      forceY += circulation * (z[i]! * alongX[i]! - x[i]! * alongZ[i]!);
      forceZ += circulation * (x[i]! * alongY[i]! - y[i]! * alongX[i]!);
    }
    const droop = parts.droop[k]!;
    const circulation = flow.stripCirculation[firstStrip + k]! * speed;
    const chord = parts.chord[k]!;
    const cl = (2 * circulation) / (speed * chord);
    const reynolds = (speed * chord) / viscosity;
    return {
      eta: parts.eta[k]!,
      x: parts.quarterX[k]!,
      y: controlY[firstSegment + k]!,
      z: controlZ[firstSegment + k]!,
      width: parts.width[k]!,
      droop: (droop * 180) / Math.PI,
      chord,
      circulation,
      cl,
      normalForce: forceY * Math.sin(droop) + forceZ * Math.cos(droop),
      forceY,
      forceZ,
      reynolds,
      cd: profile.cd(part, parts.eta[k]!, cl, reynolds),
      usableCl: profile.clMax(part, parts.eta[k]!, reynolds),
      leastCirculation: 0,
    };
  });
}

/** Sums over the wing, both halves, N. */
export function sumWing(strips: readonly StripFigures[]) {
  let normalForce = 0;
  let verticalLift = 0;
  let pushedSideways = 0;
  for (const strip of strips) {
    normalForce += 2 * strip.normalForce;
    verticalLift += 2 * strip.forceZ;
    pushedSideways += 2 * Math.abs(strip.forceY);
  }
  return { normalForce, verticalLift, pushedSideways };
}
