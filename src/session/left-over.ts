/** What closed tabs have left. */
import type { Design } from '../solver/design/document.ts';
import { canonical } from './canonical.ts';
import type { Step, Trail } from './history.ts';
import { newestOf, type Opened, openNewest, type RecoverySources, type Trouble } from './opening.ts';
import type { Found } from './storage.ts';

/** A design that a closed tab has left. */
export interface LeftOver {
  id: string;
  design: Design;
  time: number;
}

/** A copy whose whole history has been taken up, and when its newest part was made. */
export interface TakenUp {
  id: string;
  time: number;
}

/**
 * Copies of closed tabs. One whose design is in the opened history is taken up: what else it has in its own history goes
 * before the oldest step. The others are offered. One that cannot be read in part stays.
 */
export async function sortOut(sources: RecoverySources, all: Found[], opened: Opened | null, id: string) {
  const trail = opened?.trail ?? null;
  const held = await sources.tabs.held();
  if (!held || !opened) return { trail, left: [], taken: [] };
  const reached = new Set([opened.design, ...statesOf(trail)].map(canonical));
  const older: Step<unknown>[] = [];
  const left: LeftOver[] = [];
  const taken: TakenUp[] = [];
  for (const found of all) {
    if (found.id === id || found.id === opened.id || held.has(found.id)) continue;
    const troubles: Trouble[] = [];
    const other = openNewest(found, sources, troubles);
    if (!other) continue;
    if (!reached.has(canonical(other.design))) {
      left.push({ id: found.id, design: other.design, time: other.time });
      continue;
    }
    const missing = statesOf(other.trail).filter((state) => !reached.has(canonical(state)));
    for (const state of missing) {
      reached.add(canonical(state));
      older.push({ label: 'steps of another tab', state });
    }
    if (troubles.length === 0) taken.push({ id: found.id, time: newestOf(found) });
  }
  left.sort((one, other) => other.time - one.time);
  return {
    trail:
      older.length > 0 ? { past: [...older, ...(trail?.past ?? [])], future: trail?.future ?? [] } : trail,
    left,
    taken,
  };
}

const statesOf = (trail: Trail<unknown> | null) =>
  trail ? [...trail.past, ...trail.future].map(({ state }) => state) : [];
