/**
 * What can be changed of a finished foil on the beach, as a change of its document: a shim under the stabilizer, the strut's
 * place in its track, the rider, the water.
 */
import type { Design } from './document.ts';
import { describeRange, isWithin, RANGES } from './ranges.ts';

/** How a foil is set up on the beach; `asDrawn` is the document's own. */
export interface BeachSetting {
  shim: number; // degrees added to the stabilizer's incidence, nose up positive
  strut: number; // m the foil is moved aft along the board
  mass: number; // kg more rider
  water: Design['brief']['water']['kind'];
  temperature: number; // degrees Celsius
}

/** How far a card goes each way, and its steps; temperature from the document's own. */
export const BEACH_STEPS = {
  shim: { most: 0.5, step: 0.1 },
  strut: { most: 0.02, step: 0.005 },
  mass: { most: 10, step: 1 },
  temperature: { most: 15, step: 1 },
} as const;

export const asDrawn = ({ brief }: Design): BeachSetting => ({
  shim: 0,
  strut: 0,
  mass: 0,
  water: brief.water.kind,
  temperature: brief.water.temperature,
});

/** The document of a setting: the feet stay where they are on the board. Throws an Error with one sentence out of range. */
export function setUp(design: Design, { shim, strut, mass, water, temperature }: BeachSetting): Design {
  const { brief, stabilizer } = design;
  const allUpMass = allowed('brief.allUpMass', brief.allUpMass + mass);
  const x = allowed('brief.balance.x', brief.balance.x - strut);
  const incidence = stabilizer && allowed('*.incidence', stabilizer.incidence + shim);
  return {
    ...design,
    brief: {
      ...brief,
      allUpMass,
      balance: { ...brief.balance, x },
      water: { ...brief.water, kind: water, temperature: allowed('brief.water.temperature', temperature) },
    },
    stabilizer: stabilizer && { ...stabilizer, incidence: incidence ?? stabilizer.incidence },
  };
}

function allowed(key: keyof typeof RANGES, value: number): number {
  if (isWithin(RANGES[key], value)) return value;
  const name = key.replace('*.', 'stabilizer.');
  throw new Error(`${name}: found ${Number(value.toFixed(3))}, allowed ${describeRange(RANGES[key])}`);
}
