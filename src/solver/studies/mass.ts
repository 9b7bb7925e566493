/**
 * What the parts weigh and what they take: from the outline, the laminate of the document and its core. Estimates for
 * comparing and for ordering, no weighing. kg, m, m2.
 *
 * Section areas and perimeters are integrated along the curve; a shell is its skin, as thick as the document says,
 * round a foam core, and solid where the skins meet. Fibre and resin of the laminate follow from a fibre share of one
 * half by volume, as wet lay-up gives it (common practice).
 */
import type { Design } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { fourDigitThickness } from '../geometry/outline.ts';
import { heights, type PlyOutline, plyOutlines } from '../geometry/plies.ts';
import type { Skin } from '../geometry/skin.ts';
import { FOAM, type LaminatePart, materialOf } from '../structure/laminate.ts';

const STATIONS = 200;
const FIBRE_SHARE = 0.5; // by volume (common practice for wet lay-up)
const FIBRE = 1780; // kg/m3, carbon, standard modulus (maker's data, from memory)
const RESIN = 1150; // kg/m3, cured epoxy (maker's data, from memory)
const WASTE = 1.25; // resin mixed over resin that stays (common practice)

export interface PartMass {
  part: LaminatePart;
  build: 'solid' | 'shell';
  material: string;
  mass: number;
  skinMass: number; // laminate or metal
  coreMass: number; // foam
  surface: number; // m2, outer skin
  resin: number | null; // kg to mix; null where the part is metal
}

export interface PlyList {
  part: 'wing' | 'stabilizer';
  thickness: number; // m, one ply
  plies: PlyOutline[];
  cloth: number; // m2 of both sides
  fibre: number; // kg of that cloth
  bareEdge: { eta: number; width: number } | null; // widest strip along the trailing edge that no ply reaches, m
}

/** Parts the design has, heaviest use of material as the document's laminate says. */
export function partMasses(design: Design, wing: Skin, stabilizer: Skin | null): PartMass[] {
  const masses = [surfaceMass(design, 'wing', wing)];
  if (stabilizer) masses.push(surfaceMass(design, 'stabilizer', stabilizer));
  const { strut, fuselage } = design;
  if (strut) {
    const digits = { camber: 0, position: 0, thickness: strut.thickness / strut.chord };
    const profile = Array.from({ length: 201 }, (_, k) => {
      const x = 0.5 * (1 - Math.cos((Math.PI * k) / 200));
      return { x: x * strut.chord, height: 2 * fourDigitThickness(digits, x) * strut.chord };
    });
    const area = sectionAreas(profile, wallOf(design, 'strut'));
    masses.push(massOf(design, 'strut', scaled(area, strut.length)));
  }
  if (fuselage) {
    const length =
      fuselage.nose +
      (design.stabilizer ? design.stabilizer.arm + 0.75 * (stabilizer?.rib(0).chord ?? 0) : 0.2);
    const radius = 0.5 * fuselage.diameter;
    const inner = Math.max(0, radius - (wallOf(design, 'fuselage') ?? radius));
    const core = Math.PI * inner * inner;
    const area = { skin: Math.PI * radius * radius - core, core, girth: 2 * Math.PI * radius };
    masses.push(massOf(design, 'fuselage', scaled(area, length)));
  }
  return masses;
}

interface Areas {
  skin: number;
  core: number;
  girth: number;
}

function scaled({ skin, core, girth }: Areas, length: number): Areas {
  return { skin: skin * length, core: core * length, girth: girth * length };
}

function surfaceMass(design: Design, part: 'wing' | 'stabilizer', skin: Skin): PartMass {
  const total: Areas = { skin: 0, core: 0, girth: 0 };
  for (let k = 0; k < STATIONS; k++) {
    const [from, to] = [k, k + 1].map((at) => Math.sin((0.5 * Math.PI * at) / STATIONS));
    const rib = skin.rib(0.5 * (from! + to!));
    const profile = heights(skin, rib).map(({ x, height }) => ({ x: x * rib.chord, height }));
    const area = scaled(
      sectionAreas(profile, wallOf(design, part)),
      2 * (to! - from!) * skin.surface.halfLength,
    );
    total.skin += area.skin;
    total.core += area.core;
    total.girth += area.girth;
  }
  return massOf(design, part, total);
}

/** Skin and core of a section from its thickness along the chord; a null wall means solid. */
function sectionAreas(profile: ReadonlyArray<{ x: number; height: number }>, wall: number | null): Areas {
  let whole = 0;
  let core = 0;
  let girth = 0;
  for (let k = 1; k < profile.length; k++) {
    const [a, b] = [profile[k - 1]!, profile[k]!];
    const width = Math.abs(b.x - a.x);
    const slant = Math.hypot(width, 0.5 * (b.height - a.height));
    girth += 2 * slant;
    whole += 0.5 * width * (a.height + b.height);
    if (wall === null || width === 0) continue;
    const deep = (2 * wall * slant) / width; // the skin stands square to a slanting side
    core += 0.5 * width * (Math.max(0, a.height - deep) + Math.max(0, b.height - deep));
  }
  return { skin: whole - core, core, girth };
}

function wallOf(design: Design, part: LaminatePart): number | null {
  const makeup = design.laminate?.[part];
  return makeup?.build === 'shell' ? (makeup.skin ?? RANGES['laminate.*.skin'].default) : null;
}

function massOf(design: Design, part: LaminatePart, volume: Areas): PartMass {
  const makeup = design.laminate?.[part];
  const material = materialOf(makeup);
  const isMetal = material.name === 'aluminium';
  const skinMass = volume.skin * material.density;
  const coreMass = volume.core * FOAM.density;
  const resinShare = ((1 - FIBRE_SHARE) * RESIN) / (FIBRE_SHARE * FIBRE + (1 - FIBRE_SHARE) * RESIN);
  return {
    part,
    build: makeup?.build ?? 'solid',
    material: material.name,
    mass: skinMass + coreMass,
    skinMass,
    coreMass,
    surface: volume.girth,
    resin: isMetal ? null : skinMass * resinShare * WASTE,
  };
}

/** The plies of a surface, as far in as its skin is thick; of a solid one as many as meet in the middle. */
export function plyList(design: Design, part: 'wing' | 'stabilizer', skin: Skin): PlyList {
  const { thickness = RANGES['build.ply.thickness'].default, weight = RANGES['build.ply.weight'].default } =
    design.build?.ply ?? {};
  const wall = wallOf(design, part);
  const most = wall === null ? 400 : Math.max(1, Math.round(wall / thickness));
  const plies = plyOutlines(skin, thickness, most);
  const cloth = plies.reduce((sum, { area }) => sum + 2 * area, 0);
  return { part, thickness, plies, cloth, fibre: cloth * weight, bareEdge: bareEdge(skin, plies[0]) };
}

/** Where the outermost ply stops furthest short of the trailing edge. */
function bareEdge({ surface }: Skin, outermost: PlyOutline | undefined): PlyList['bareEdge'] {
  if (!outermost) return null;
  const strips = outermost.reach
    .slice(0, -1)
    .map(({ eta, rear }) => ({ eta, width: (1 - rear) * surface.chord(eta) }));
  const widest = strips.reduce((most, strip) => (strip.width > most.width ? strip : most));
  return widest.width > 1e-5 ? widest : null;
}
