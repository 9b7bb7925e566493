/** What the parts weigh, the cloth and resin they take, and where no ply reaches. */
import { html, nothing } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { PartMass } from '../../solver/studies/mass.ts';
import type { Overview, PlySummary } from '../../workshop/overview.ts';
import { figureTable } from '../figure-table.ts';

const grams = (mass: number) => (mass < 0.0005 ? '–' : `${writeFixed(1000 * mass, 0)} g`);

export function material({ masses, plies }: Overview, units: UnitSystem) {
  return html`${massTable(masses, units)} ${plyTable(plies, units)}
    <p class="note">
      From outline, laminate and core: half fibre by volume, a quarter more resin mixed than stays, standard densities
      (common practice). For comparing and ordering, not for weighing.
    </p>
    ${plies.map((ply) => bareEdge(ply, units))}`;
}

function massTable(masses: readonly PartMass[], units: UnitSystem) {
  const sum = (read: (mass: PartMass) => number) => masses.reduce((total, mass) => total + read(mass), 0);
  const cells = (name: string, made: string, surface: number, parts: number[]) => ({
    cells: [name, made, formatWithUnit(surface, 'area', units), ...parts.map(grams)],
  });
  return figureTable(
    'Mass by part, estimated',
    ['', 'made', 'outer skin', 'laminate or metal', 'core', 'mass', 'resin to mix'],
    [
      ...masses.map(({ part, build, material, surface, skinMass, coreMass, mass, resin }) =>
        cells(part, `${build}, ${material}`, surface, [skinMass, coreMass, mass, resin ?? 0]),
      ),
      {
        ...cells(
          'together',
          '',
          sum(({ surface }) => surface),
          [
            sum(({ skinMass }) => skinMass),
            sum(({ coreMass }) => coreMass),
            sum(({ mass }) => mass),
            sum(({ resin }) => resin ?? 0),
          ],
        ),
        isHere: true,
      },
    ],
  );
}

function plyTable(plies: readonly PlySummary[], units: UnitSystem) {
  return figureTable(
    'Plies; their outlines are among the drawings',
    ['', 'a side at most', 'cloth', 'its weight'],
    plies.map(({ part, count, cloth, fibre }) => ({
      cells: [part, String(count), formatWithUnit(cloth, 'area', units), grams(fibre)],
    })),
  );
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
