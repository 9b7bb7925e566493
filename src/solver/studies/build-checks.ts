/**
 * What a builder should look at before anything is cut: places that are too thin, too narrow, too sharply bent, outlines
 * that cross themselves, skin that a mould would hold. Each finding says where. Limits without a source are common practice.
 */
import type { Design } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { type Draw, undercutsOf } from '../geometry/parting.ts';
import type { Pair, Rib, Skin } from '../geometry/skin.ts';
import { slotFits } from '../geometry/slot.ts';

export type CheckKind = 'edge' | 'tip' | 'bend' | 'crossing' | 'undercut' | 'slot' | 'core';

export interface Finding {
  kind: CheckKind;
  part: 'wing' | 'stabilizer';
  eta: number; // where it is worst
  distance: number; // m along the curve from the root
  message: string; // with the place in it
}

export interface CheckOptions {
  draw: Draw; // of a mould
}

export const LEAST_EDGE = 0.0004; // m, a trailing edge that survives handling (common practice)
export const LEAST_TIP = 0.012; // m of chord that can still be cut and laminated (common practice)
export const MOST_STRAIN = 0.01; // of a foam or wood core bent cold over a jig (common practice)
const LEAST_UNDERCUT = 0.0003; // m; less lets go by itself (common practice)
const STATIONS = 120;

export function buildChecks(
  design: Design,
  skins: { wing: Skin; stabilizer: Skin | null },
  { draw }: CheckOptions,
): Finding[] {
  const found = (part: 'wing' | 'stabilizer', skin: Skin) => [
    ...edgeFindings(part, skin),
    ...tipFindings(part, skin),
    ...bendFindings(part, skin, design.build?.stock ?? RANGES['build.stock'].default),
    ...crossingFindings(part, skin),
    ...inside(design, part, skin),
    ...undercutFindings(part, skin, draw),
  ];
  return [...found('wing', skins.wing), ...(skins.stabilizer ? found('stabilizer', skins.stabilizer) : [])];
}

const mm = (length: number, decimals = 1) => `${(1000 * length).toFixed(decimals)} mm`;

function finding(
  part: Finding['part'],
  skin: Skin,
  kind: CheckKind,
  eta: number,
  text: (where: string) => string,
): Finding {
  const distance = eta * skin.surface.halfLength;
  return { kind, part, eta, distance, message: text(placeOf(skin, eta)) };
}

function placeOf({ surface }: Skin, eta: number): string {
  if (eta < 1e-9) return 'at the root';
  return eta > 1 - 1e-9 ? 'at the tip' : `${mm(eta * surface.halfLength, 0)} out along the curve`;
}

function ribsOf(skin: Skin): Rib[] {
  return Array.from({ length: STATIONS + 1 }, (_, k) => skin.rib(Math.sin((0.5 * Math.PI * k) / STATIONS)));
}

function edgeFindings(part: Finding['part'], skin: Skin): Finding[] {
  const edge = (rib: Rib) => {
    const [upper, lower] = [skin.outline(rib, 0), skin.outline(rib, 2)];
    return rib.chord * Math.hypot(upper[0] - lower[0], upper[1] - lower[1]);
  };
  const ribs = ribsOf(skin).filter(({ chord }) => chord >= LEAST_TIP);
  const thin = ribs.filter((rib) => edge(rib) < LEAST_EDGE - 1e-7);
  if (thin.length === 0) return [];
  const worst = thin.reduce((least, rib) => (edge(rib) < edge(least) ? rib : least));
  const from = placeOf(skin, thin[0]!.eta);
  return [
    finding(
      part,
      skin,
      'edge',
      worst.eta,
      (where) =>
        `Trailing edge down to ${mm(edge(worst), 2)} ${where}, under ${mm(LEAST_EDGE)} from ${from.replace(/^at /, '')} on. Set a least trailing edge, or expect it to chip.`,
    ),
  ];
}

function tipFindings(part: Finding['part'], skin: Skin): Finding[] {
  const tip = skin.surface.chord(1);
  if (tip >= LEAST_TIP) return [];
  const narrow = ribsOf(skin).find(({ chord }) => chord < LEAST_TIP)!;
  return [
    finding(
      part,
      skin,
      'tip',
      1,
      () =>
        `Tip chord ${mm(tip)}: narrower than ${mm(LEAST_TIP, 0)} from ${placeOf(skin, narrow.eta)} on; cut it square there or finish it by hand.`,
    ),
  ];
}

function bendFindings(part: Finding['part'], skin: Skin, stock: number): Finding[] {
  const { surface } = skin;
  const findings: Finding[] = [];
  const kink = surface.droop(0);
  if (Math.abs(kink) > 1e-4)
    findings.push(
      finding(
        part,
        skin,
        'bend',
        0,
        () =>
          `The curve is broken at the centre by ${((360 / Math.PI) * Math.abs(kink)).toFixed(1)} degrees: stock cannot be bent there, build two halves and join them.`,
      ),
    );
  const step = 1 / (2 * STATIONS);
  const tightest = ribsOf(skin)
    .map(({ eta }) => Math.min(1 - step, Math.max(step, eta)))
    .map((eta) => ({
      eta,
      turn: Math.abs(surface.droop(eta + step) - surface.droop(eta - step)) / (2 * step * surface.halfLength),
    }))
    .reduce((most, at) => (at.turn > most.turn ? at : most));
  const least = stock / (2 * MOST_STRAIN);
  if (tightest.turn * least > 1)
    findings.push(
      finding(
        part,
        skin,
        'bend',
        tightest.eta,
        (where) =>
          `Bent to a radius of ${mm(1 / tightest.turn, 0)} ${where}: stock of ${mm(stock)} bends to ${mm(least, 0)} at 1 % strain. Use thinner stock in layers, or cut it to shape.`,
      ),
    );
  return findings;
}

function crossingFindings(part: Finding['part'], skin: Skin): Finding[] {
  const ribs = ribsOf(skin);
  const plan = (across: (rib: Rib) => number): Pair[] => [
    ...ribs.map((rib): Pair => [across(rib), rib.x - 0.25 * rib.chord]),
    ...ribs
      .filter(({ chord }) => chord > 0)
      .reverse()
      .map((rib): Pair => [across(rib), rib.x + 0.75 * rib.chord]),
  ];
  const findings: Finding[] = [];
  const flat = selfCrossing(plan(({ distance }) => distance));
  if (flat !== null)
    findings.push(
      finding(
        part,
        skin,
        'crossing',
        ribs[Math.min(flat, 2 * STATIONS - flat, STATIONS)]?.eta ?? 1,
        (where) => `The outline laid flat crosses itself ${where}.`,
      ),
    );
  for (let k = 0; k <= STATIONS; k += 10) {
    const rib = ribs[k]!;
    if (rib.chord < LEAST_TIP) continue;
    const outline = Array.from({ length: 96 }, (_, j) => skin.outline(rib, (2 * (j + 0.01)) / 96));
    if (selfCrossing(outline) === null) continue;
    findings.push(
      finding(part, skin, 'crossing', rib.eta, (where) => `The section crosses itself ${where}.`),
    );
    break;
  }
  const turn = ribs.find((rib, k) => k > 0 && foldsOver(skin, ribs[k - 1]!, rib));
  if (turn)
    findings.push(
      finding(
        part,
        skin,
        'crossing',
        turn.eta,
        (where) => `The curve is so tight that the skin folds over itself ${where}.`,
      ),
    );
  return findings;
}

/** Whether a line along the span runs backward between two ribs: the radius is less than half the thickness. */
function foldsOver(skin: Skin, inner: Rib, outer: Rib): boolean {
  const along = [outer.y - inner.y, outer.z - inner.z];
  return [0.7, 1.3].some((share) => {
    const [a, b] = [skin.point(inner, share), skin.point(outer, share)];
    return (b[1] - a[1]) * along[0]! + (b[2] - a[2]) * along[1]! <= 0 && inner.eta > 0;
  });
}

/** Index of the first side of a closed outline that crosses a later one; null where none does. */
export function selfCrossing(points: readonly Pair[]): number | null {
  const count = points.length;
  const side = (a: Pair, b: Pair, p: Pair) => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
  for (let i = 0; i < count; i++)
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      const [a, b, c, d] = [points[i]!, points[i + 1]!, points[j]!, points[(j + 1) % count]!];
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return i;
    }
  return null;
}

/** Where slot and laminate no longer fit into the ribs. */
function inside({ build = {} }: Design, part: Finding['part'], skin: Skin): Finding[] {
  const findings: Finding[] = [];
  const { slot, allowance = 0 } = build;
  const ribs = ribsOf(skin);
  const ended = slot && ribs.find((rib) => rib.chord === 0 || !slotFits(skin, rib, slot, allowance));
  if (ended)
    findings.push(
      finding(
        part,
        skin,
        'slot',
        ended.eta,
        (where) => `The spar slot no longer fits the rib from ${where.replace(/^at /, '')} on.`,
      ),
    );
  const thin =
    allowance > 0 &&
    ribs.find((rib) => {
      const [upper, lower] = [skin.outline(rib, 0.6), skin.outline(rib, 1.4)];
      return (upper[1] - lower[1]) * rib.chord < 2 * allowance;
    });
  if (thin)
    findings.push(
      finding(
        part,
        skin,
        'core',
        thin.eta,
        (where) =>
          `No core is left inside ${mm(allowance)} of laminate from ${where.replace(/^at /, '')} on.`,
      ),
    );
  return findings;
}

function undercutFindings(part: Finding['part'], skin: Skin, draw: Draw): Finding[] {
  const undercuts = undercutsOf(skin, draw).filter(({ depth }) => depth > LEAST_UNDERCUT);
  if (undercuts.length === 0) return [];
  const worst = undercuts.reduce((most, at) => (at.depth > most.depth ? at : most));
  const freely = draw !== 'edges' && undercutsOf(skin, 'edges').every(({ depth }) => depth <= LEAST_UNDERCUT);
  const lies = `lies ${mm(worst.depth)} ${worst.upper ? 'above' : 'below'} the parting`;
  const held = {
    fitted: `parted flat and drawn square to the parting holds the skin: the edge ${lies}`,
    upright: `parted level and drawn straight up holds the skin: the edge ${lies}`,
    edges: `parted along the edges holds the skin: it leans over up to ${mm(worst.depth)} past its edge`,
  }[draw];
  return [
    finding(
      part,
      skin,
      'undercut',
      worst.eta,
      (where) => `A mould ${held} ${where}.${freely ? ' Parted along the edges it comes off.' : ''}`,
    ),
  ];
}
