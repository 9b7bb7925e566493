/**
 * A card's setting in its address, behind the design: `#design.1.DATA;shim=0.3;strut=10;mass=5;water=fresh;temperature=8`.
 * What is as drawn is left out. Degrees, millimetres, kilograms, degrees Celsius.
 */
import { asDrawn, BEACH_STEPS, type BeachSetting } from '../solver/design/beach-setting.ts';
import type { Design } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';

export type SettingReading = { setting: BeachSetting; problem: string | null };

const LONGEST = 200; // characters
const MILLI = 0.001;

type Stepped = keyof typeof BEACH_STEPS;
const STEPPED: readonly Stepped[] = ['shim', 'strut', 'mass', 'temperature'];

/** Least and greatest of a stepped setting of this design, SI: the card's own limits within the document's. */
export function settingRange(key: Stepped, { brief, stabilizer }: Design): { min: number; max: number } {
  const { most } = BEACH_STEPS[key];
  const limits = {
    shim: { at: stabilizer?.incidence ?? 0, range: RANGES['*.incidence'] },
    strut: {
      at: -brief.balance.x,
      range: { min: -RANGES['brief.balance.x'].max, max: -RANGES['brief.balance.x'].min },
    },
    mass: { at: brief.allUpMass, range: RANGES['brief.allUpMass'] },
    temperature: { at: brief.water.temperature, range: RANGES['brief.water.temperature'] },
  };
  const { at, range } = limits[key];
  const from = key === 'temperature' ? at : 0; // a temperature is told as it is, the others from what is drawn
  return { min: from + Math.max(-most, range.min - at), max: from + Math.min(most, range.max - at) };
}

/** The address without its setting, followed by this one. */
export function withSetting(address: string, setting: BeachSetting, design: Design): string {
  const drawn = asDrawn(design);
  const told = STEPPED.filter((key) => setting[key] !== drawn[key]).map(
    (key) => `${key}=${Number((setting[key] / unitOf(key)).toFixed(3))}`,
  );
  if (setting.water !== drawn.water) told.push(`water=${setting.water}`);
  return [address.split(';')[0]!, ...told].join(';');
}

/** The setting in an address; one that cannot be read leaves everything as drawn and says why. */
export function readSetting(address: string, design: Design): SettingReading {
  const drawn = asDrawn(design);
  const refuse = (found: string, allowed: string): SettingReading => ({
    setting: drawn,
    problem: `The setting in the link cannot be read: found “${found.slice(0, 40)}”, allowed ${allowed}. The card starts as drawn.`,
  });
  const [, ...told] = address.split(';');
  if (told.join(';').length > LONGEST) return refuse(told.join(';'), `up to ${LONGEST} characters`);
  const setting = { ...drawn };
  for (const each of told) {
    const [, key, value] = /^(\w+)=([\w.+-]*)$/.exec(each) ?? [];
    if (key === 'water' && (value === 'sea' || value === 'fresh')) {
      setting.water = value;
      continue;
    }
    if (key === 'water') return refuse(each, 'sea or fresh');
    const stepped = STEPPED.find((name) => name === key);
    if (!stepped) return refuse(each, `${STEPPED.join(', ')} or water`);
    const { min, max } = settingRange(stepped, design);
    const size = unitOf(stepped);
    const found = Number(value) * size;
    if (value === '' || !(found >= min - 1e-9 && found <= max + 1e-9))
      return refuse(each, `${round(min / size)} to ${round(max / size)}`);
    setting[stepped] = Math.min(max, Math.max(min, found));
  }
  return { setting, problem: null };
}

const unitOf = (key: Stepped): number => (key === 'strut' ? MILLI : 1);
const round = (value: number): number => Number(value.toFixed(3));
