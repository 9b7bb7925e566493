/**
 * Turns a law into another kind while the shape stays as near as the new kind allows: tapers keep root chord and
 * area, droop keeps the tip where it is, points and formulas follow the curve. Chords and sweep in m, droop and twist
 * in degrees.
 */
import type { ChordLaw, DroopLaw, Pair, Planform, SweepLaw, TwistLaw } from '../solver/design/document.ts';
import { type Surface, surfaceOf } from '../solver/geometry/surface.ts';
import { factor, solveFactored } from '../solver/numeric/dense.ts';
import { findRoot } from '../solver/numeric/roots.ts';
import { type BentDroop, droopAs, isBent, tidy, tidyAngle, tipMeasureOf, withTip } from './planform-edits.ts';

const DEGREES = 180 / Math.PI;
const CHORD_STATIONS = [0, 0.25, 0.5, 0.7, 0.85, 0.95, 1];
const LINE_STATIONS = [0, 0.25, 0.5, 0.75, 1];
const CUBIC = [0, 1, 2, 3];

type Curve = (eta: number) => number;

export function chordAs(planform: Planform, kind: ChordLaw['kind']): ChordLaw {
  const surface = surfaceOf(planform);
  const root = tidy(surface.chord(0));
  const mean = surface.unrolledArea / surface.unrolledLength;
  switch (kind) {
    case 'taper':
      return { kind, root, tip: tidy(Math.max(0, 2 * mean - root)) };
    case 'elliptic':
      return { kind, root: tidy((mean * 4) / Math.PI) };
    case 'superelliptic':
      return { kind, root, n: fullness(mean / root), m: 2 };
    case 'points':
      return { kind, at: pointsOf(surface.chord, CHORD_STATIONS, tidy) };
    case 'formula':
      return { kind, expression: chordExpression(planform.chord, surface) };
  }
}

/** The power n with which sqrt(1 - eta^n) has this mean: 2 for an ellipse, more for a fuller outline. */
function fullness(mean: number): number {
  const meanOf = (n: number) => average((eta) => Math.sqrt(1 - eta ** n));
  const [least, most] = [1, 12];
  const n = findRoot((power) => meanOf(power) - mean, least, most, 1e-6);
  return Number((n ?? (mean > meanOf(2) ? most : least)).toFixed(3));
}

function chordExpression(law: ChordLaw, surface: Surface): string {
  switch (law.kind) {
    case 'taper':
      return `${law.root} + ${brief(law.tip - law.root)} * eta`;
    case 'elliptic':
      return `${law.root} * sqrt(1 - eta^2)`;
    case 'superelliptic':
      return `${law.root} * (1 - eta^${law.n})^(1/${law.m})`;
    case 'formula':
      return law.expression;
    case 'points':
      return polynomial(surface.chord, CUBIC);
  }
}

export function sweepAs(planform: Planform, kind: SweepLaw['kind']): SweepLaw {
  const surface = surfaceOf(planform);
  const line: Curve = (eta) => surface.x(eta) - surface.x(0);
  const angleOf = (reach: number) => tidyAngle(Math.atan(reach / surface.halfLength) * DEGREES);
  switch (kind) {
    case 'straight':
      return { kind, angle: angleOf(line(1)) };
    case 'rake': {
      const power = 3;
      const [reach = 0, tip = 0] = fitPowers(line, [1, power]);
      return { kind, angle: angleOf(reach), tip: tidy(tip), power };
    }
    case 'points':
      return { kind, at: pointsOf(line, LINE_STATIONS, tidy) };
    case 'formula':
      return planform.sweep.kind === 'formula'
        ? planform.sweep
        : { kind, expression: polynomial(line, planform.sweep.kind === 'straight' ? [1] : [1, 2, 3]) };
  }
}

export function droopLawAs(planform: Planform, kind: DroopLaw['kind']): DroopLaw {
  const surface = surfaceOf(planform);
  const droop: Curve = (eta) => surface.droop(eta) * DEGREES;
  switch (kind) {
    case 'flat':
      return { kind };
    case 'vee':
    case 'arc':
      return bentLike(planform, surface, { kind, tipAngle: 0 });
    case 'late':
      return bentLike(planform, surface, { kind, from: 0.5, power: 1.5, tipAngle: 0 });
    case 'gull':
      return bentLike(planform, surface, { kind, rootAngle: 5, knee: 0.35, tipAngle: 0 });
    case 'points':
      return { kind, at: pointsOf(droop, droopStations(planform.droop), tidyAngle) };
    case 'formula':
      return { kind, expression: droopExpression(planform.droop, surface, droop) };
  }
}

/** The new kind bent until its tip is as low as the old one's; by the same tip angle where no bend reaches that. */
function bentLike(planform: Planform, surface: Surface, shape: BentDroop): BentDroop {
  const measure = isBent(planform.droop) ? tipMeasureOf(planform.droop) : 'tipAngle';
  try {
    return droopAs(planform, withTip(shape, 'tipDrop', surface.tipDrop), measure);
  } catch {
    return withTip(shape, 'tipAngle', tidyAngle(surface.tipAngle * DEGREES));
  }
}

function droopStations(law: DroopLaw): number[] {
  const corner = law.kind === 'late' ? law.from : law.kind === 'gull' ? law.knee : 0;
  return [...new Set([...LINE_STATIONS, corner])].sort((one, other) => one - other);
}

function droopExpression(law: DroopLaw, surface: Surface, droop: Curve): string {
  const tip = brief(surface.tipAngle * DEGREES);
  switch (law.kind) {
    case 'flat':
      return '0';
    case 'vee':
      return tip;
    case 'arc':
      return `${tip} * eta`;
    case 'late':
      return `eta < ${law.from} ? 0 : ${tip} * ((eta - ${law.from}) / ${brief(1 - law.from)})^${law.power}`;
    case 'formula':
      return law.expression;
    default:
      return polynomial(droop, CUBIC);
  }
}

export function twistAs(planform: Planform, kind: TwistLaw['kind']): TwistLaw {
  const surface = surfaceOf(planform);
  const twist: Curve = (eta) => surface.twist(eta) * DEGREES;
  switch (kind) {
    case 'linear':
      return { kind, tip: tidyAngle(fitPowers(twist, [1])[0] ?? 0) };
    case 'points':
      return { kind, at: pointsOf(twist, LINE_STATIONS, tidyAngle) };
    case 'formula':
      return planform.twist.kind === 'formula'
        ? planform.twist
        : { kind, expression: polynomial(twist, planform.twist.kind === 'linear' ? [1] : CUBIC) };
  }
}

const pointsOf = (curve: Curve, stations: readonly number[], round: (value: number) => number): Pair[] =>
  stations.map((eta) => [eta, round(curve(eta))]);

const brief = (value: number): string => String(Number(value.toPrecision(6)));

/** Midpoint rule, bunched towards the tip where outlines are steep. */
function average(curve: Curve): number {
  const count = 200;
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const u = (k + 0.5) / count;
    sum += curve(1 - u * u) * 2 * u;
  }
  return sum / count;
}

/** Least-squares factors of these powers of eta. */
function fitPowers(curve: Curve, powers: readonly number[]): number[] {
  const n = powers.length;
  const matrix = new Float64Array(n * n);
  const sides = new Float64Array(n);
  for (let k = 0; k <= 100; k++) {
    const eta = k / 100;
    for (let i = 0; i < n; i++) {
      const weight = eta ** powers[i]!;
      sides[i]! += weight * curve(eta);
      for (let j = 0; j < n; j++) matrix[i * n + j]! += weight * eta ** powers[j]!;
    }
  }
  const pivots = new Int32Array(n);
  factor(matrix, n, pivots);
  solveFactored(matrix, n, pivots, sides);
  return [...sides];
}

/** The fitted polynomial as a formula, terms that do not matter left out. */
function polynomial(curve: Curve, powers: readonly number[]): string {
  const factors = fitPowers(curve, powers);
  const largest = Math.max(...factors.map(Math.abs));
  const terms = powers.flatMap((power, k) => {
    const value = factors[k]!;
    if (Math.abs(value) <= 1e-7 * largest) return [];
    const variable = power === 0 ? '' : power === 1 ? ' * eta' : ` * eta^${power}`;
    return [`${brief(value)}${variable}`];
  });
  return terms.length ? terms.join(' + ').replaceAll('+ -', '- ') : '0';
}
