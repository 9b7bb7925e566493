/**
 * What softness does to the ride: stability derivatives of the foil that gives over those of the foil drawn, against
 * speed, and which part gives how much of it. The foil first takes the shape it flies in (flying-foil.ts), then every
 * unit cause is answered with all parts giving (elastic.ts), the board held. The vortex part, per radian, along the
 * design's axes.
 */
import type { Design } from '../design/document.ts';
import { mixAlpha, mixAlphaSlope } from '../forces/loads.ts';
import type { Craft, Resolution } from '../geometry/craft.ts';
import type { Derivatives } from '../report.ts';
import { PARTS, type Part } from '../structure/parts.ts';
import { shapesOf } from '../structure/shapes.ts';
import { type Skeleton, skeletonOf } from '../structure/skeleton.ts';
import type { AntisymmetricUnits } from '../vortex/causes.ts';
import { type Flow, FlowPool } from '../vortex/flow.ts';
import { type Condition, conditionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { derivativesAbout, type SideLoad } from './derivatives.ts';
import { ElasticFlow } from './elastic.ts';
import { type FlexibleModes, flexibleModes } from './flexible-modes.ts';
import type { Answer, Total } from './flow-answers.ts';
import { flyFoil } from './flying-foil.ts';
import { runFoil } from './running.ts';
import type { Study } from './study.ts';

/** Figures compared; the first five about the balance point with the strut, the last of the foil alone about the origin. */
export const RIDE_FIGURES = ['Clbeta', 'Cnbeta', 'Clr', 'Cnr', 'Cmalpha', 'rollFromYaw'] as const;
export type RideFigure = (typeof RIDE_FIGURES)[number];
export type RideFigures = Record<RideFigure, number>;

export interface RidePoint {
  speed: number; // m/s
  rigid: RideFigures;
  flexible: RideFigures;
}

export interface RideStudy {
  points: RidePoint[]; // take-off to top speed
  problem: string | null; // why some points are missing
  modes: FlexibleModes | null; // at cruise, the strut's swings among them; null without a strut
  /** At cruise: change of each figure by each part alone, by the shape the wing flies in, and by parts together. */
  cruise: RidePoint;
  shares: Array<{ part: Part | 'flyingShape' | 'together'; change: RideFigures }>;
}

export interface RideOptions {
  count?: number; // speeds; default 7
  strips?: number; // of the wing; default 24
}

export function* rideStudy(design: Design, { count = 7, strips = 24 }: RideOptions = {}): Study<RideStudy> {
  const resolution: Resolution = { strips, stabilizerStrips: Math.round(strips / 2), rows: 1 };
  const ride = new Ride(design, resolution);
  const { takeOff, cruise, top } = design.brief.speeds;
  const study: RideStudy = {
    ...ride.shares(cruise),
    points: [],
    problem: null,
    modes: flexibleModes(design, {}, resolution),
  };
  for (let k = 0; k < count; k++) {
    yield (k + 1) / (count + 1);
    const speed = count === 1 ? cruise : takeOff + ((top - takeOff) * k) / (count - 1);
    try {
      study.points.push(ride.at(speed));
    } catch (error) {
      study.problem = error instanceof Error ? error.message : String(error);
    }
  }
  return study;
}

/** One side of the comparison at one speed: everything the figures need, flow kept in its own pool. */
interface Setting {
  craft: Craft;
  flow: Flow;
  alpha: number;
  condition: Condition;
}

class Ride {
  private readonly pool = new FlowPool();

  constructor(
    private readonly design: Design,
    private readonly resolution: Resolution,
  ) {}

  at(speed: number): RidePoint {
    const { rigid } = this.drawn(speed);
    return { speed, rigid, flexible: this.flying(speed).figures() };
  }

  shares(speed: number): Pick<RideStudy, 'cruise' | 'shares'> {
    const { rigid } = this.drawn(speed);
    const flying = this.flying(speed);
    const held = flying.figures(new Set());
    const all = flying.figures();
    const shares: RideStudy['shares'] = [{ part: 'flyingShape', change: difference(held, rigid) }];
    for (const part of PARTS)
      if (flying.has(part)) shares.push({ part, change: difference(flying.figures(new Set([part])), held) });
    const single = shares.reduce((sum, { change }) => plus(sum, change), rigid);
    shares.push({ part: 'together', change: difference(all, single) });
    return { cruise: { speed, rigid, flexible: all }, shares };
  }

  private drawn(speed: number): { rigid: RideFigures } {
    const condition = conditionOf(this.design.brief, { speed });
    const craft = craftFor(this.design, condition.depth, this.resolution);
    const { flow, alpha } = runFoil(this.pool, 'drawn', craft, condition, 'whole');
    const setting = { craft, flow, alpha, condition };
    return {
      rigid: new FlexibleFoil(this.design, setting, skeletonOf(this.design, craft)).figures(new Set()),
    };
  }

  private flying(speed: number): FlexibleFoil {
    const condition = conditionOf(this.design.brief, { speed });
    const foil = flyFoil(this.pool, this.design, condition, this.resolution, 'whole');
    const { flow, alpha, craft } = foil;
    return new FlexibleFoil(this.design, { craft, flow, alpha, condition }, skeletonOf(this.design, craft));
  }
}

/** Derivatives of a foil with a choice of parts that give. */
export class FlexibleFoil {
  private readonly craft: ElasticFlow;
  private readonly foil: ElasticFlow;
  private readonly pitch: ElasticFlow;
  private readonly pressure: number;
  private readonly causes: { craft: Answer[]; foil: Answer[]; alpha: Answer };

  constructor(
    private readonly design: Design,
    private readonly setting: Setting,
    skeleton: Skeleton,
  ) {
    const { craft, flow, alpha, condition } = setting;
    this.pressure = condition.density * condition.speed ** 2;
    mixAlpha(flow.symmetric, alpha, flow.base);
    mixAlphaSlope(flow.symmetric, alpha, flow.change);
    const odd = shapesOf(skeleton, 'antisymmetric');
    this.craft = new ElasticFlow(
      flow,
      alpha,
      craft,
      skeleton,
      'antisymmetric',
      craft.parts.strut !== null,
      odd,
    );
    this.foil = new ElasticFlow(flow, alpha, craft, skeleton, 'antisymmetric', false, odd);
    this.pitch = new ElasticFlow(flow, alpha, craft, skeleton, 'symmetric', false);
    const list = (elastic: ElasticFlow, { beta, rollRate, yawRate }: AntisymmetricUnits) =>
      [beta, rollRate, yawRate].map((unit) => elastic.ofCause(unit));
    this.causes = {
      craft: list(this.craft, flow.craft),
      foil: list(this.foil, flow.foil),
      alpha: this.pitch.ofCause(flow.change),
    };
  }

  has(part: Part): boolean {
    return [this.craft, this.pitch].some(({ shapes }) => shapes.some((shape) => shape.part === part));
  }

  /** `parts`: those that give; all when left out. */
  figures(parts?: ReadonlySet<Part>): RideFigures {
    const { balance } = this.design.brief;
    const craft = this.lateral(this.craft, this.causes.craft, balance.x, balance.height, parts);
    const foil = this.lateral(this.foil, this.causes.foil, 0, 0, parts);
    return {
      Clbeta: craft.Clbeta,
      Cnbeta: craft.Cnbeta,
      Clr: craft.Clr,
      Cnr: craft.Cnr,
      Cmalpha: this.pitchStiffness(parts),
      rollFromYaw: foil.Clr / Math.abs(foil.Clp),
    };
  }

  lateral(
    elastic: ElasticFlow,
    causes: readonly Answer[],
    x: number,
    z: number,
    parts?: ReadonlySet<Part>,
  ): Derivatives {
    const { projectedArea: area, span } = this.setting.craft.wing;
    const [beta, roll, yaw] = causes.map((cause) => sideOf(elastic.flexed(cause, this.pressure, parts)));
    return derivativesAbout(beta!, roll!, yaw!, { area, span, x, z });
  }

  /** C_m by alpha about the balance point. */
  private pitchStiffness(parts?: ReadonlySet<Part>): number {
    const { projectedArea, meanChord } = this.setting.craft.wing;
    const { x, height } = this.design.brief.balance;
    const { force, moment } = this.pitch.flexed(this.causes.alpha, this.pressure, parts);
    return (2 / (projectedArea * meanChord)) * (moment[1] - height * force[0] + x * force[2]);
  }
}

function sideOf({ force, moment }: Total): SideLoad {
  return { y: force[1], mx: moment[0], mz: moment[2] };
}

function difference(one: RideFigures, other: RideFigures): RideFigures {
  return combine(one, other, -1);
}

function plus(one: RideFigures, other: RideFigures): RideFigures {
  return combine(one, other, 1);
}

function combine(one: RideFigures, other: RideFigures, sign: number): RideFigures {
  return Object.fromEntries(
    RIDE_FIGURES.map((key) => [key, one[key] + sign * other[key]]),
  ) as unknown as RideFigures;
}
