/**
 * Where the layer turns turbulent all along wing and stabilizer at one speed, level running: a few sections of each,
 * solved as in skin-study.ts; one half, the other mirrors it. Shares of the chord; 1 where a side stays laminar to its end.
 */
import type { Design } from '../design/document.ts';
import { type FoilPart, Stations, stateAtLift } from './section-station.ts';
import type { Study } from './study.ts';

export interface TransitionOptions {
  speed: number; // m/s
}

export interface TransitionStation {
  eta: number;
  chord: number; // m
  cl: number;
  reynolds: number;
  /** x/c of transition; null where no flow settles at this lift. */
  upper: number | null;
  lower: number | null;
}

export interface TransitionMap {
  speed: number; // m/s
  wing: TransitionStation[]; // root to tip
  stabilizer: TransitionStation[]; // empty without one
  /** Laminar part of the area of both sides; null where no section settled. */
  laminarShare: { wing: number | null; stabilizer: number | null };
}

const PLACES = [0, 0.15, 0.3, 0.45, 0.6, 0.72, 0.83, 0.91, 0.96]; // eta; nearer the tip no section flies by itself

/** Throws an Error with one sentence where the foil does not run level at the speed. */
export function* transitionMap(design: Design, { speed }: TransitionOptions): Study<TransitionMap> {
  const stations = new Stations(design);
  stations.running(speed);
  const parts = (['wing', 'stabilizer'] as const).filter((part) => design[part]);
  const found = { wing: [] as TransitionStation[], stabilizer: [] as TransitionStation[] };
  for (const [k, part] of parts.entries())
    for (const [n, eta] of PLACES.entries()) {
      found[part].push(stationAt(stations, part, eta, speed));
      yield (k + (n + 1) / PLACES.length) / parts.length;
    }
  return {
    speed,
    ...found,
    laminarShare: { wing: laminarShare(found.wing), stabilizer: laminarShare(found.stabilizer) },
  };
}

function stationAt(stations: Stations, part: FoilPart, eta: number, speed: number): TransitionStation {
  const { shape, chord, cl, reynolds } = stations.at({ part, eta }, speed);
  const figures = stateAtLift(shape, cl, reynolds, { clarity: stations.design.brief.water.clarity })?.state
    .figures;
  return {
    eta,
    chord,
    cl,
    reynolds,
    upper: figures?.upper.transition ?? null,
    lower: figures?.lower.transition ?? null,
  };
}

/** By trapezia between the stations that settled; the tip beyond the last is left out. */
function laminarShare(stations: readonly TransitionStation[]): number | null {
  const settled = stations.filter(({ upper, lower }) => upper !== null && lower !== null);
  let [laminar, all] = [0, 0];
  for (let k = 1; k < settled.length; k++) {
    const [a, b] = [settled[k - 1]!, settled[k]!];
    const width = 0.5 * (b.eta - a.eta);
    all += width * (a.chord + b.chord);
    laminar += 0.5 * width * (a.chord * (a.upper! + a.lower!) + b.chord * (b.upper! + b.lower!));
  }
  return all > 0 ? laminar / all : null;
}
