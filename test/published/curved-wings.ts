/** Group 3, continued: lift slope on the projected area and e on the projected span of bent wings. */
import type { DroopLaw } from '../../src/solver/design/document.ts';
import { kinkedDroop, plainDesign } from '../support/designs.ts';
import type { PublishedRow } from './row.ts';
import { chordOf, nameOf, OWN_LATTICE, type Shape, solveSmall } from './wing.ts';

// droop, taper, unrolled aspect ratio, b^2/S; slope and efficiency with one row; with four
const LATTICE: Array<[DroopLaw, string, number, number, number, [number, number], [number, number]]> = [
  [{ kind: 'vee', tipAngle: 5 }, 'vee of 5 degrees', 1, 8, 7.9696, [4.5456, 0.9758], [4.57, 0.9736]],
  [{ kind: 'vee', tipAngle: 15 }, 'vee of 15 degrees', 0.4, 10, 9.6593, [4.8567, 1.0067], [4.864, 1.0062]],
  [{ kind: 'vee', tipAngle: 20 }, 'vee of 20 degrees', 1, 8, 7.5175, [4.3428, 0.9983], [4.358, 0.9956]],
  [{ kind: 'vee', tipAngle: 20 }, 'vee of 20 degrees', 0.4, 10, 9.3969, [4.7547, 1.0169], [4.758, 1.0164]],
  [{ kind: 'vee', tipAngle: 30 }, 'vee of 30 degrees', 1, 8, 6.9282, [4.0791, 1.0318], [4.082, 1.0282]],
  [{ kind: 'vee', tipAngle: 30 }, 'vee of 30 degrees', 0.4, 10, 8.6603, [4.4686, 1.0481], [4.459, 1.048]],
  [{ kind: 'arc', tipAngle: 20 }, 'arc to 20 degrees', 0.4, 10, 9.7552, [4.9258, 1.0095], [4.938, 1.0088]],
  [{ kind: 'arc', tipAngle: 30 }, 'arc to 30 degrees', 1, 8, 7.6394, [4.4507, 1.0161], [4.472, 1.0143]],
  [{ kind: 'arc', tipAngle: 30 }, 'arc to 30 degrees', 0.4, 10, 9.4541, [4.8495, 1.0291], [4.861, 1.0285]],
  [{ kind: 'arc', tipAngle: 45 }, 'arc to 45 degrees', 1, 8, 7.2025, [4.3296, 1.0732], [4.348, 1.0717]],
  [kinkedDroop(0.6, 15), 'tips 15 degrees down from 0.6', 1, 8, 7.891, [4.5337, 0.9873], [4.556, 0.9853]],
  [kinkedDroop(0.6, 15), 'tips 15 degrees down from 0.6', 0.4, 10, 9.8288, [4.9532, 1.0047], [4.965, 1.004]],
  [kinkedDroop(0.6, 30), 'tips 30 degrees down from 0.6', 1, 8, 7.5713, [4.4661, 1.0277], [4.482, 1.0261]],
  [kinkedDroop(0.6, 30), 'tips 30 degrees down from 0.6', 0.4, 10, 9.3283, [4.8545, 1.0369], [4.861, 1.036]],
];

const latticeRows = LATTICE.flatMap(
  ([droop, name, taper, aspectRatio, projected, one, four]): PublishedRow[] => {
    const design = plainDesign({ chord: chordOf(aspectRatio, taper), droop });
    return [1, 4].map((rows): PublishedRow => {
      const published = rows === 1 ? one : four;
      return {
        quantities: ['lift slope', 'span efficiency', 'b^2/S'],
        conditions: `${name}, unrolled AR ${aspectRatio}, taper ${taper}, ${rows === 1 ? 'one row' : 'four rows'}`,
        published: [...published, projected],
        tolerance: [{ share: 0.003 }, { within: 0.002 }, { within: 1e-4 }],
        source: `${OWN_LATTICE}, 80 panels a half, agrees with a second one to 2e-4`,
        status: 'derived',
        method: rows === 1 ? 'extended line' : 'four rows',
        compute: () => {
          const { lift, inducedDrag, geometry } = solveSmall(design, { rows });
          return [lift.CLalpha, inducedDrag.spanEfficiency!, geometry.wing.aspectRatio];
        },
      };
    });
  },
);

// droop, chord, unrolled aspect ratio; slope on projected and on unrolled area; efficiency
const ONE_ROW: Array<[DroopLaw & { kind: 'vee' | 'arc' }, Shape, number, number, number, number]> = [
  [{ kind: 'vee', tipAngle: 5 }, 'elliptic', 8, 4.7655, 4.7473, 1.0005],
  [{ kind: 'vee', tipAngle: 20 }, 'elliptic', 8, 4.5643, 4.289, 1.0229],
  [{ kind: 'vee', tipAngle: 30 }, 'elliptic', 8, 4.303, 3.7265, 1.0559],
  [{ kind: 'vee', tipAngle: 40 }, 'elliptic', 8, 3.9506, 3.0264, 1.109],
  [{ kind: 'arc', tipAngle: 10 }, 'elliptic', 8, 4.7636, 4.7455, 1.0027],
  [{ kind: 'arc', tipAngle: 30 }, 'elliptic', 8, 4.6446, 4.4873, 1.0336],
  [{ kind: 'vee', tipAngle: 40 }, 0.4, 10, 4.0813, 3.1264, 1.0975],
  [{ kind: 'arc', tipAngle: 40 }, 0.4, 10, 4.7488, 4.4524, 1.0577],
];

const oneRowRows = ONE_ROW.map(
  ([droop, shape, aspectRatio, projected, unrolled, efficiency]): PublishedRow => ({
    quantities: ['lift slope on projected area', 'lift slope on unrolled area', 'span efficiency'],
    conditions: `${droop.kind} to ${droop.tipAngle} degrees, unrolled AR ${aspectRatio}, ${nameOf(shape)}`,
    published: [projected, unrolled, efficiency],
    tolerance: [{ share: 0.005 }, { share: 0.005 }, { within: 0.003 }],
    source: `${OWN_LATTICE}, one row on the curved line, 120 and 240 strips`,
    status: 'derived',
    method: 'extended line',
    compute: () => {
      const design = plainDesign({ chord: chordOf(aspectRatio, shape), droop });
      const { lift, inducedDrag, geometry } = solveSmall(design);
      const { projectedArea, unrolledArea } = geometry.wing;
      return [lift.CLalpha, (lift.CLalpha * projectedArea) / unrolledArea, inducedDrag.spanEfficiency!];
    },
  }),
);

export const curvedWings: PublishedRow[] = [...latticeRows, ...oneRowRows];
