/**
 * How the untended craft moves after a nudge: the modes of the motion in motion.ts, with times to half or double,
 * periods and damping. The derivatives are the vortex part with strip drag added, strut included, about the balance
 * point. These figures compare designs: a rider never stands still.
 */
import type { Design } from '../design/document.ts';
import type { ProfileModel } from '../forces/profile.ts';
import { type Complex, eigenvalues, eigenvector } from '../numeric/eigen.ts';
import type { FlowPool } from '../vortex/flow.ts';
import { addedMass } from './added-mass.ts';
import type { Condition } from './condition.ts';
import { type Coupling, couplingOf } from './coupling.ts';
import { type Inertia, inertiaOf } from './inertia.ts';
import { type LateralKind, nameLateral, nameVertical, type VerticalKind } from './mode-kinds.ts';
import { lateralMotion, type Pushes, verticalMotion } from './motion.ts';
import { pushesOf } from './pushes.ts';
import { dragOf, type RunningFoil } from './running.ts';
import { sumOf } from './sums.ts';

export type LateralState = 'v' | 'p' | 'r' | 'phi';
export type VerticalState = 'u' | 'w' | 'q' | 'theta' | 'd';

export interface Mode<State extends string, Kind extends string = string> {
  kind: Kind;
  real: number; // 1/s
  imaginary: number; // 1/s, positive or nothing: a pair is one mode
  timeToHalf: number | null; // s
  timeToDouble: number | null; // s
  period: number | null; // s
  damping: number; // -real/|root|: 1 dies out without swinging, below 0 grows
  shape: Record<State, Complex>; // m/s, rad/s, rad, m; scaled as a whole by nothing in particular
}

/** A mode not yet named. */
export type RawMode<State extends string> = Omit<Mode<State>, 'kind'>;

export interface Modes {
  lateral: Array<Mode<LateralState, LateralKind>>; // fastest growth first
  vertical: Array<Mode<VerticalState, VerticalKind>>;
  /** 1/s: the fall of the same craft when the rider keeps it from turning: near sqrt(g/height). */
  fallHeldStraight: number;
  inertia: Inertia;
  pushes: Pushes; // how the vertical forces change with each motion, about the balance point
  addedMass: { sway: number; heave: number; roll: number; pitch: number; yaw: number }; // kg, kg m2
}

export interface Root {
  group: 'lateral' | 'vertical';
  real: number; // 1/s
  imaginary: number; // 1/s
}

const LATERAL: readonly LateralState[] = ['v', 'p', 'r', 'phi'];
const VERTICAL: readonly VerticalState[] = ['u', 'w', 'q', 'theta', 'd'];

/** Modes of a craft whose flow was solved with scope 'whole'. */
export function modesOf(
  pool: FlowPool,
  design: Design,
  condition: Condition,
  foil: RunningFoil,
  profile: ProfileModel,
  coupling: Coupling = couplingOf(pool, foil, condition, profile, design.brief.balance),
): Modes {
  const { balance } = design.brief;
  const { sources } = dragOf(design, foil, condition, profile);
  const { projectedArea: area, span } = foil.craft.wing;
  const inertia = inertiaOf(design, span);
  const water = addedMass(foil.craft, condition.density, balance);
  const running = { ...condition, alpha: foil.alpha };
  const by = sumOf([coupling.craft.vortex.total, coupling.craft.profile.total]);
  const lateral = lateralMotion(running, inertia, water, by, { area, span });
  // The origin lies ahead of the balance point by x and below it by height.
  const lead = balance.x * Math.cos(foil.alpha) + balance.height * Math.sin(foil.alpha);
  const pushes = pushesOf(pool, condition, foil, sources, balance);
  const vertical = verticalMotion(running, inertia, water, pushes, lead);
  const { speed } = condition;
  const turn = (2 * speed) / span;
  return {
    lateral: nameLateral(modesOfMatrix(lateral, LATERAL, { v: speed, p: turn, r: turn, phi: 1 })),
    vertical: nameVertical(
      modesOfMatrix(vertical, VERTICAL, { u: speed, w: speed, q: turn, theta: 1, d: span }),
    ),
    fallHeldStraight: fallWithoutTurning(lateral),
    inertia,
    pushes,
    addedMass: { sway: water[7]!, heave: water[14]!, roll: water[21]!, pitch: water[28]!, yaw: water[35]! },
  };
}

/** The fastest growth when the yaw rate is held at nothing: its row and column struck out. */
function fallWithoutTurning(lateral: Float64Array): number {
  const kept = [0, 1, 3];
  const matrix = Float64Array.from(kept.flatMap((i) => kept.map((j) => lateral[4 * i + j]!)));
  return Math.max(...eigenvalues(matrix, 3).map(({ real }) => real));
}

/** Every eigenvalue, both of a pair, as the batch command prints them. */
export function rootsOf(modes: Modes): Root[] {
  const list = (group: Root['group'], found: ReadonlyArray<Mode<string>>) =>
    found.flatMap(({ real, imaginary }) =>
      (imaginary === 0 ? [0] : [imaginary, -imaginary]).map((part) => ({ group, real, imaginary: part })),
    );
  return [...list('lateral', modes.lateral), ...list('vertical', modes.vertical)];
}

/** Modes of d/dt s = A s. `scale`: one unit of each state, so that angles compare with speeds and rates. */
export function modesOfMatrix<State extends string>(
  matrix: Float64Array,
  states: readonly State[],
  scale: Record<State, number>,
): Array<RawMode<State>> {
  const n = states.length;
  const unit = states.map((state) => scale[state]);
  const scaled = matrix.map((value, k) => (value * unit[k % n]!) / unit[Math.floor(k / n)]!);
  return eigenvalues(scaled, n)
    .filter(({ imaginary }) => imaginary >= 0)
    .sort((one, other) => other.real - one.real)
    .map((root) => {
      const vector = eigenvector(scaled, n, root);
      const entries = states.map((state, k) => {
        const { real, imaginary } = vector[k]!;
        return [state, { real: real * unit[k]!, imaginary: imaginary * unit[k]! }];
      });
      return { ...describeRoot(root), shape: Object.fromEntries(entries) as Record<State, Complex> };
    });
}

function describeRoot({ real, imaginary }: Complex) {
  const size = Math.hypot(real, imaginary);
  return {
    real,
    imaginary,
    timeToHalf: real < 0 ? Math.LN2 / -real : null,
    timeToDouble: real > 0 ? Math.LN2 / real : null,
    period: imaginary > 0 ? (2 * Math.PI) / imaginary : null,
    damping: size === 0 ? 0 : -real / size,
  };
}
