/** What the parts weigh, the cloth and resin they take, and where no ply reaches. */
import { html, nothing } from 'lit';
import { formatValue, formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { PartMass } from '../../solver/studies/mass.ts';
import type { Overview, PlySummary } from '../../workshop/overview.ts';
import { tableWithGhost } from '../figure-table.ts';
import { figureCell, quantityCell } from '../table-cells.ts';

const grams = (mass: number) =>
  figureCell(
    mass < 0.0005 ? null : mass,
    (value, sign) => `${formatValue(1000 * value, 'ratio', 'si', { decimals: 0, sign })} g`,
  );

export function material({ masses, plies }: Overview, ghost: Overview | null, units: UnitSystem) {
  return html`${massTable(masses, ghost?.masses ?? null, units)} ${plyTable(plies, ghost?.plies ?? null, units)}
    <p class="note">
      From outline, laminate and core: half fibre by volume, a quarter more resin mixed than stays, standard densities
      (common practice). For comparing and ordering, not for weighing.
    </p>
    ${plies.map((ply) => bareEdge(ply, units))}`;
}

function massTable(own: readonly PartMass[], ghost: readonly PartMass[] | null, units: UnitSystem) {
  const cells = (name: string, made: string, surface: number, parts: number[]) => ({
    cells: [name, made, quantityCell(surface, 'area', units), ...parts.map(grams)],
  });
  return tableWithGhost('Mass by part, estimated', own, ghost, (masses) => {
    const sum = (read: (mass: PartMass) => number) => masses.reduce((total, mass) => total + read(mass), 0);
    const sums = [
      sum(({ skinMass }) => skinMass),
      sum(({ coreMass }) => coreMass),
      sum(({ mass }) => mass),
      sum(({ resin }) => resin ?? 0),
    ];
    return {
      head: ['', 'made', 'outer skin', 'laminate or metal', 'core', 'mass', 'resin to mix'],
      rows: [
        ...masses.map(({ part, build, material, surface, skinMass, coreMass, mass, resin }) =>
          cells(part, `${build}, ${material}`, surface, [skinMass, coreMass, mass, resin ?? 0]),
        ),
        {
          ...cells(
            'together',
            '',
            sum(({ surface }) => surface),
            sums,
          ),
          isHere: true,
        },
      ],
    };
  });
}

function plyTable(own: readonly PlySummary[], ghost: readonly PlySummary[] | null, units: UnitSystem) {
  return tableWithGhost('Plies; their outlines are among the drawings', own, ghost, (plies) => ({
    head: ['', 'a side at most', 'cloth', 'its weight'],
    rows: plies.map(({ part, count, cloth, fibre }) => ({
      cells: [
        part,
        quantityCell(count, 'ratio', 'si', { decimals: 0 }),
        quantityCell(cloth, 'area', units),
        grams(fibre),
      ],
    })),
  }));
}

function bareEdge({ part, bareEdge: bare }: PlySummary, units: UnitSystem) {
  if (!bare) return nothing;
  const length = (value: number) =>
    formatWithUnit(value, 'length', units, { decimals: units === 'si' ? 4 : 1 });
  return html`<p class="note">
    ${part}: no ply reaches the last ${length(bare.width)} at the trailing edge ${length(bare.distance)} out: the section
    is thinner there than two plies, resin alone.
  </p>`;
}
