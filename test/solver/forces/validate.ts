/** What every report must satisfy, whatever the design: figures that are numbers, and sums that agree. */
import type { Report } from '../../../src/solver/report.ts';
import { expectClose } from '../../support/close.ts';

const RADIANS = Math.PI / 180;

/** Throws a sentence naming the first figure that is no number or does not add up. */
export function validate(report: Report): void {
  expectFinite(report, 'report');
  const { lift, ledger, condition, geometry, inducedDrag } = report;
  const { aspectRatio, projectedArea } = geometry.wing;
  const force = 0.5 * condition.density * condition.speed ** 2 * projectedArea;
  const exact = { within: 1e-9 * force };
  expectClose('lift of the surfaces', lift.wing + lift.stabilizer, lift.total, exact);
  expectClose('CL', lift.CL * force, lift.total, exact);
  expectClose('CDi', inducedDrag.CDi * force, inducedDrag.farField, exact);
  expectPositive('induced drag', inducedDrag.farField);
  expectPositive('least factor', inducedDrag.leastFactor);
  expectPositive('lift slope', lift.CLalpha);
  if (inducedDrag.spanEfficiency !== null) {
    const drag = lift.CL ** 2 / (Math.PI * aspectRatio * inducedDrag.spanEfficiency);
    expectClose('span efficiency', drag, inducedDrag.CDi, { share: 1e-9 });
  }
  expectClose('leaned away', ledger.leanedAway, ledger.normalForce - ledger.verticalLift, exact);
  expectClose('lost', ledger.leanedAway + ledger.metAtSmallerAngle, ledger.lostLift, exact);
  expectClose('kept and lost', ledger.verticalLift + ledger.lostLift, ledger.flatLift, exact);
  if (ledger.lostFraction !== null)
    expectClose('lost share', ledger.lostFraction * ledger.flatLift, ledger.lostLift, exact);
  expectStrips(report, exact);
  const { Clp } = report.stability.foil;
  if (!(Clp < 0)) throw new Error(`roll damping: found ${Clp}, expected below 0`);
}

function expectStrips({ strips, ledger, condition }: Report, exact: { within: number }): void {
  let [up, along, aside] = [0, 0, 0];
  for (const { droop, forceY, forceZ, normalForce, cl, circulation, chord } of strips.wing) {
    up += 2 * forceZ;
    along += 2 * normalForce;
    aside += 2 * Math.abs(forceY);
    const turned = forceY * Math.sin(droop * RADIANS) + forceZ * Math.cos(droop * RADIANS);
    expectClose('normal force of a strip', normalForce, turned, exact);
    expectClose('cl of a strip', cl * condition.speed * chord, 2 * circulation, { within: 1e-12 });
  }
  expectClose('vertical lift', ledger.verticalLift, up, exact);
  expectClose('normal force', ledger.normalForce, along, exact);
  expectClose('pushed sideways', ledger.pushedSideways, aside, exact);
}

function expectPositive(what: string, value: number): void {
  if (!(value > 0)) throw new Error(`${what}: found ${value}, expected above 0`);
}

function expectFinite(value: unknown, path: string): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${path}: found ${value}`);
  if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value)) expectFinite(inner, `${path}.${key}`);
}
