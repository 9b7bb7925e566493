/**
 * Deliberate faults: each is one line of the solver gone wrong as lines do. `npm run faults` puts them in one at a time
 * and lists the published checks that notice. A fault that nothing notices is a hole in the checks.
 */
export interface Fault {
  name: string;
  file: string; // below src/solver
  find: string; // stands there once
  put: string;
}

export const FAULTS: readonly Fault[] = [
  {
    name: 'sign of the free-surface image in the tangency',
    file: 'vortex/influence.ts',
    find: 'addComponents(own, ownRow, even, row, line, nodes, px, py, image, -ny, nz);',
    put: 'addComponents(own, ownRow, even, row, line, nodes, px, py, image, ny, -nz);',
  },
  {
    name: 'sign of the trailing legs',
    file: 'vortex/filament.ts',
    find: 'return (r + dx) / (r * (side + TINY));',
    put: 'return -(r + dx) / (r * (side + TINY));',
  },
  {
    name: 'sign of the sideways part of the Trefftz normal',
    file: 'vortex/system.ts',
    find: 'const ny = -this.alongZ[i]!;',
    put: 'const ny = this.alongZ[i]!;',
  },
  {
    name: 'a factor of two in the rate derivatives',
    file: 'studies/derivatives.ts',
    find: 'const rate = 2 / span;',
    put: 'const rate = 4 / span;',
  },
  {
    name: 'sign of the stream of a yaw rate',
    file: 'vortex/causes.ts',
    find: 'set(out, -y, x, 0)',
    put: 'set(out, y, x, 0)',
  },
  {
    name: 'the base velocity left out of the lateral forces',
    file: 'studies/derivatives.ts',
    find: 'const uz = g * V.z[i]! + (i < foil ? G * v.z[i]! : 0);',
    put: 'const uz = g * V.z[i]!;',
  },
  {
    name: 'tangency a twentieth of the chord too far aft',
    file: 'geometry/strips.ts',
    find: 'return slope / (4 * Math.PI * rows);',
    put: 'return slope / (4 * Math.PI * rows) + 0.05 / rows;',
  },
  {
    name: 'zero-lift angle a tenth too small',
    file: 'geometry/thin.ts',
    find: 'zeroLift: (atZero - atOne) / Math.PI',
    put: 'zeroLift: (0.9 * (atZero - atOne)) / Math.PI',
  },
  {
    name: 'a wrong constant in the turbulent friction',
    file: 'section/turbulent.ts',
    find: 'const main = 0.3 * Math.exp(-1.33 * shape - exponent * decades);',
    put: 'const main = 0.25 * Math.exp(-1.33 * shape - exponent * decades);',
  },
  {
    name: 'waves that grow by the natural logarithm of Re_theta',
    file: 'section/transition.ts',
    find: 'Math.log10(reTheta) - criticalLogRe(shape)',
    put: 'Math.log(reTheta) - criticalLogRe(shape)',
  },
  {
    name: 'a wrong factor in the stress function of solid sections',
    file: 'structure/torsion.ts',
    find: 'load[i]! += width[k]! * (8 / 3) * h ** 3 * value[i]!;',
    put: 'load[i]! += width[k]! * 2 * h ** 3 * value[i]!;',
  },
  {
    name: 'practical salinity taken for grams per kilogram in the density of sea water',
    file: 'design/water.ts',
    find: 'const s = salinity / SALINITY_PER_PRACTICAL;',
    put: 'const s = salinity;',
  },
];
