/**
 * Stiffness at a glance: the strut, the compliance account, the flying droop and the bench fit of one design. What the
 * batch command prints and the panel shows first; the long studies stand beside it. Estimates for comparing designs, no
 * approval of strength.
 */
import { CAUTION } from '../design/caution.ts';
import type { Design } from '../design/document.ts';
import { surfaceOf } from '../geometry/surface.ts';
import type { ConditionOptions } from '../report.ts';
import { JOINT_NAMES, type JointName, SPRING_AXES, type SpringAxis, springOf } from '../structure/joints.ts';
import { LAMINATE_PARTS, type LaminatePart, type Material, materialOf } from '../structure/laminate.ts';
import { type BenchFit, benchFit } from './bench-fit.ts';
import {
  type ComplianceAccount,
  complianceAccount,
  type PartShares,
  TEST_FORCE,
  TEST_MOMENT,
} from './compliance.ts';
import { type FlyingShape, flyingShape } from './flying-shape.ts';
import { profileFor } from './profile-for.ts';
import type { SideRule } from './side-trim.ts';
import { type FootMotion, type StrutState, strutState } from './strut-state.ts';

export interface StiffnessOptions {
  condition?: Omit<ConditionOptions, 'alpha'>;
  side?: SideRule; // how the rig's sideways pull is held; upright when left out
}

export interface Stiffness {
  strut: StrutState;
  account: ComplianceAccount;
  /** Null where the foil finds no shape, and why. */
  flying: FlyingShape | null;
  problem: string | null;
  bench: BenchFit;
  materials: Record<LaminatePart, Material>; // as the document and its defaults have them
  springs: Record<JointName, Record<SpringAxis, number>>; // N m/rad
}

export function stiffness(design: Design, { condition = {}, side }: StiffnessOptions = {}): Stiffness {
  const rest = {
    strut: strutState(design, {
      condition,
      profile: profileFor(design, condition?.sections),
      ...(side && { side }),
    }),
    account: complianceAccount(design),
    bench: benchFit(design),
    materials: each(LAMINATE_PARTS, (part) => materialOf(design.laminate?.[part])),
    springs: each(JOINT_NAMES, (name) => each(SPRING_AXES, (axis) => springOf(design.joints, name, axis))),
  };
  try {
    return { ...rest, flying: flyingShape(design, { condition }), problem: null };
  } catch (error) {
    return { ...rest, flying: null, problem: error instanceof Error ? error.message : String(error) };
  }
}

function each<K extends string, T>(names: readonly K[], read: (name: K) => T): Record<K, T> {
  return Object.fromEntries(names.map((name) => [name, read(name)])) as Record<K, T>;
}

/** As the batch command prints it: SI, angles in degrees; shares of the give add up to 1. */
export interface StiffnessFigures {
  strut: {
    EI: number;
    GJ: number;
    tipDeflection: number; // m to the side under testForce, box included
    tipTwist: number; // degrees under testMoment, box included
    testForce: number;
    testMoment: number;
    ofWhichBox: { tipDeflection: number; tipTwist: number };
    /** Of the foot; leeway and heel (degrees) and the strut's side force (N) hold the rig's sideways pull. */
    running: FootMotion & { leeway: number; heel: number; sideForce: number };
  } | null;
  compliance: PartShares;
  cases: ComplianceAccount['cases'];
  droop: { built: number; flying: number | null };
  flying: Omit<FlyingShape, 'wing' | 'stabilizer'> | null;
  strains: StrutState['running']['strains'];
  safety: number;
  problem: string | null;
  caution: string;
}

export function stiffnessFigures(design: Design, options: StiffnessOptions = {}): StiffnessFigures {
  const { strut, account, flying, problem } = stiffness(design, options);
  const { test, running, EI, GJ } = strut;
  const shape = flying && (({ wing: _wing, stabilizer: _stabilizer, ...figures }) => figures)(flying);
  return {
    strut:
      EI && GJ !== null && test.foot && test.ofWhichBox && running.foot
        ? {
            EI: EI.side,
            GJ,
            tipDeflection: test.foot.side,
            tipTwist: test.foot.twist,
            testForce: TEST_FORCE,
            testMoment: TEST_MOMENT,
            ofWhichBox: { tipDeflection: test.ofWhichBox.side, tipTwist: test.ofWhichBox.twist },
            running: {
              ...running.foot,
              leeway: strut.pulled?.leeway ?? 0,
              heel: strut.pulled?.heel ?? 0,
              sideForce: strut.pulled?.strutForce ?? 0,
            },
          }
        : null,
    compliance: account.shares,
    cases: account.cases,
    droop: {
      built: surfaceOf(design.wing).tipAngle * (180 / Math.PI),
      flying: flying?.tipDroop.flying ?? null,
    },
    flying: shape,
    strains: running.strains,
    safety: strut.safety,
    problem: problem ?? strut.problem,
    caution: CAUTION,
  };
}
