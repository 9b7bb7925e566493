/**
 * What can be changed on the beach: a shim under the stabilizer, the strut's place in its track, the rider, the water. Each
 * setting is a changed document and is solved as such, so that several changes at once are not added up from single ones.
 * SI; angles in degrees; shares as fractions.
 *
 * The board is the ruler: x along it, aft of where the wing's root stands as drawn. Moving the strut moves the whole foil
 * along it and leaves the water alone. Feet and balance point move together, as everywhere in this program; the weight of
 * board and foil, which stay behind when the rider steps, is left out.
 */
import { asDrawn, type BeachSetting, setUp } from '../design/beach-setting.ts';
import type { Design } from '../design/document.ts';
import { alphaLoads } from '../forces/loads.ts';
import { breachHeel } from '../geometry/heel.ts';
import { attempt } from './attempt.ts';
import { depthAtSpeed } from './condition.ts';
import { holdTerms } from './hold.ts';
import { neutralPoint } from './pitch.ts';
import { balanceSpeed } from './shims.ts';
import { type LevelRunner, speedPoint } from './speed.ts';
import { makeRunner } from './speed-study.ts';
import { type Study, within } from './study.ts';
import { lowestSpeed } from './take-off.ts';

const DEGREES = 180 / Math.PI;

/** Figures of one setting; null where no level running gives one. */
export interface BeachFigures {
  cruise: {
    feet: number; // m along the board, of an upright rider
    balance: number; // m aft of the foil's own origin
    drag: number; // N
    staticMargin: number; // of the mean chord, about where it balances
    holdIndex: number | null;
    isReachable: boolean; // a rider can stand there
  } | null;
  problem: string | null; // why there is no cruise
  trimSpeed: number | null; // m/s at which it balances with the feet left where they balance at cruise as drawn
  takeOff: number | null; // m/s
  topDrag: number | null; // N
}

export interface BeachAnswer {
  setting: BeachSetting;
  drawn: BeachFigures;
  set: BeachFigures;
  /** What no setting moves: heel (degrees) that brings a wing tip to the surface at cruise depth; null where none does. */
  breachHeel: number | null;
}

/** Throws as `setUp` does. */
export function* beachStudy(
  design: Design,
  { setting }: { setting: BeachSetting },
  make: (design: Design) => LevelRunner = makeRunner,
): Study<BeachAnswer> {
  const changed = setUp(design, setting);
  yield 0;
  const ruler = make(design);
  const stance = attempt(() => ruler.run(design.brief.speeds.cruise, 'incidence').stance);
  const drawn = yield* within(figuresOf(design, 0, stance, make), 0.1, 0.6);
  const isChanged = Object.entries(asDrawn(design)).some(
    ([key, value]) => setting[key as keyof BeachSetting] !== value,
  );
  const set = isChanged ? yield* within(figuresOf(changed, setting.strut, stance, make), 0.6, 1) : drawn;
  return { setting, drawn, set, breachHeel: heelOf(ruler) };
}

/** Figures of a document already set up, the foil moved `strut` aft; `stance` balances the drawn one at cruise. */
function* figuresOf(
  design: Design,
  strut: number,
  stance: number | null,
  make: (design: Design) => LevelRunner,
): Study<BeachFigures> {
  const { speeds } = design.brief;
  const runner = make(design);
  let problem: string | null = null;
  let cruise: BeachFigures['cruise'] = null;
  try {
    cruise = cruiseOf(runner, speeds.cruise, strut);
  } catch (error) {
    problem = error instanceof Error ? error.message : String(error);
  }
  yield 0.3;
  const topDrag = attempt(() => runner.run(speeds.top, 'incidence').totalDrag);
  yield 0.5;
  const takeOff = lowestSpeed(runner, runner.weight);
  yield 0.8;
  const trim = stance === null ? null : balanceSpeed(runner, stance - strut);
  return { cruise, problem, trimSpeed: trim, takeOff, topDrag };
}

function cruiseOf(runner: LevelRunner, speed: number, strut: number): NonNullable<BeachFigures['cruise']> {
  const state = runner.run(speed, 'incidence');
  const { feet, stance, total, isReachable } = speedPoint(runner, state);
  const { craft, flow } = runner.rigFor(state.depth);
  const neutral = neutralPoint(alphaLoads(flow.system, flow.symmetric), state.alpha);
  const CL = runner.weight / (0.5 * runner.density * speed ** 2 * craft.wing.projectedArea);
  return {
    feet: feet + strut,
    balance: stance,
    drag: total,
    staticMargin: (neutral - stance) / craft.wing.meanChord,
    holdIndex: holdTerms(craft.wing, craft.stabilizer, CL).index,
    isReachable,
  };
}

function heelOf(runner: LevelRunner): number | null {
  const { brief } = runner.design;
  const depth = depthAtSpeed(brief, brief.speeds.cruise);
  const heel = depth === null ? null : attempt(() => breachHeel(runner.rigFor(depth).craft.wing, depth));
  return heel === null ? null : heel * DEGREES;
}

/** One change by itself, for paper. */
export interface BeachRow {
  setting: BeachSetting;
  changes: keyof BeachSetting | null; // null: as drawn
  figures: BeachFigures;
}

/** Single changes: what fits on a printed card. Settings outside the document's ranges are left out. */
export function* beachTable(
  design: Design,
  _options: Record<string, never> = {},
  make: (design: Design) => LevelRunner = makeRunner,
): Study<BeachRow[]> {
  const drawn = asDrawn(design);
  const stance = attempt(() => make(design).run(design.brief.speeds.cruise, 'incidence').stance);
  const cases = singleChanges(drawn, design.stabilizer !== null);
  const rows: BeachRow[] = [];
  for (const [k, { changes, setting }] of cases.entries()) {
    const changed = attempt(() => setUp(design, setting));
    if (!changed) continue;
    const study = figuresOf(changed, setting.strut, stance, make);
    rows.push({ setting, changes, figures: yield* within(study, k / cases.length, (k + 1) / cases.length) });
  }
  return rows;
}

function singleChanges(drawn: BeachSetting, hasStabilizer: boolean): Array<Omit<BeachRow, 'figures'>> {
  const each = (changes: keyof BeachSetting, settings: Array<Partial<BeachSetting>>) =>
    settings.map((setting) => ({ changes, setting: { ...drawn, ...setting } }));
  return [
    { changes: null, setting: drawn },
    ...(hasStabilizer
      ? each(
          'shim',
          [-0.5, -0.2, 0.2, 0.5].map((shim) => ({ shim })),
        )
      : []),
    ...each(
      'strut',
      [-0.02, -0.01, 0.01, 0.02].map((strut) => ({ strut })),
    ),
    ...each(
      'mass',
      [-10, -5, 5, 10].map((mass) => ({ mass })),
    ),
    ...each('water', [{ water: drawn.water === 'sea' ? 'fresh' : 'sea' }]),
    ...each(
      'temperature',
      [-10, -5].map((colder) => ({ temperature: drawn.temperature + colder })),
    ),
  ];
}
