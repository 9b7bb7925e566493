/**
 * Changes a builder can make, each by itself, and how much of the foil's give each takes away: which one stiffens most.
 */
import type { Design, Makeup } from '../design/document.ts';
import { type JointName, SPRING_AXES, springOf } from '../structure/joints.ts';
import { type LaminatePart, layUp, MATERIALS, type MaterialName } from '../structure/laminate.ts';
import { complianceAccount, LOAD_CASES, type LoadCase } from './compliance.ts';
import type { Study } from './study.ts';

export interface Remedy {
  label: string;
  /** Mean over the load cases of give after over give before: 0.9 is a tenth less. */
  left: number;
  byCase: Record<LoadCase, number>;
}

/** The one that stiffens most comes first. */
export function* remedies(design: Design): Study<Remedy[]> {
  const before = complianceAccount(design).cases;
  const changes = changesTo(design);
  const list: Remedy[] = [];
  for (const [label, changed] of changes) {
    const after = complianceAccount(changed).cases;
    const ratios = LOAD_CASES.map((load, k) => [load, after[k]!.give / before[k]!.give] as const);
    list.push({
      label,
      left: ratios.reduce((sum, [, ratio]) => sum + ratio, 0) / ratios.length,
      byCase: Object.fromEntries(ratios) as Record<LoadCase, number>,
    });
    yield list.length / changes.length;
  }
  return list.sort((a, b) => a.left - b.left);
}

type Change = [label: string, design: Design];

function changesTo(design: Design): Change[] {
  const { strut, fuselage, stabilizer } = design;
  return [
    ...(strut ? strutChanges(design, strut) : []),
    ...(fuselage
      ? [
          ['fuselage 2 mm thicker', withDiameter(design, fuselage.diameter + 0.002)] satisfies Change,
          ...layUpChanges(design, 'fuselage'),
        ]
      : []),
    ['wing joint twice as stiff', withStifferJoint(design, 'wing')],
    ...layUpChanges(design, 'wing'),
    ...(stabilizer
      ? [['stabilizer joint twice as stiff', withStifferJoint(design, 'stabilizer')] satisfies Change]
      : []),
  ];
}

function strutChanges(design: Design, strut: NonNullable<Design['strut']>): Change[] {
  const larger = (chord: number, thickness: number): Design => {
    const grown = <S extends { chord: number; thickness: number }>(size: S): S => ({
      ...size,
      chord: size.chord + chord,
      thickness: size.thickness + thickness,
    });
    return { ...design, strut: { ...grown(strut), ...(strut.top && { top: grown(strut.top) }) } };
  };
  return [
    ['strut 1 mm thicker', larger(0, 0.001)],
    ['strut 10 mm wider', larger(0.01, 0)],
    ...layUpChanges(design, 'strut'),
    ['box twice as stiff', withStifferJoint(design, 'box')],
    ['strut joint twice as stiff', withStifferJoint(design, 'strut')],
  ];
}

const STIFFER: Partial<Record<MaterialName, MaterialName>> = {
  standard: 'intermediate',
  intermediate: 'high',
};

/** A stiffer fibre, and a tenth of the plies turned one way or the other. Own moduli are left as they are. */
function layUpChanges(design: Design, part: LaminatePart): Change[] {
  const makeup: Makeup = design.laminate?.[part] ?? {};
  const name = makeup.material ?? 'standard';
  if (makeup.modulus !== undefined || MATERIALS[name].ply === null) return [];
  const { along, diagonal } = layUp(makeup);
  const made = (change: Makeup): Design => ({
    ...design,
    laminate: { ...design.laminate, [part]: { ...makeup, ...change } },
  });
  const next = STIFFER[name];
  const turned = (by: number, label: string): Change[] => {
    const [up, down] = [along + by, diagonal - by];
    return up >= 0 && up <= 1 && down >= 0 && down <= 1 ? [[label, made({ along: up, diagonal: down })]] : [];
  };
  return [
    ...(next ? [[`${part} of ${MATERIALS[next].label}`, made({ material: next })] satisfies Change] : []),
    ...turned(0.1, `${part} with a tenth more plies along`),
    ...(makeup.shear === undefined ? turned(-0.1, `${part} with a tenth more plies at 45 degrees`) : []),
  ];
}

function withDiameter(design: Design, diameter: number): Design {
  return { ...design, fuselage: { ...design.fuselage!, diameter } };
}

function withStifferJoint(design: Design, name: JointName): Design {
  const spring = Object.fromEntries(
    SPRING_AXES.map((axis) => [axis, 2 * springOf(design.joints, name, axis)]),
  );
  return { ...design, joints: { ...design.joints, [name]: spring } };
}
