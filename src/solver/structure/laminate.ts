/**
 * What parts are made of: plies of unidirectional fibre at 0, +-45 and 90 degrees to the part's length, or metal, to the
 * moduli along the part and in shear, by classical laminate theory (S. W. Tsai, H. T. Hahn, Introduction to Composite
 * Materials, 1980, ch. 4: stiffnesses of a balanced stack are averages of the turned plies'). Pa, kg/m3, strains as
 * shares.
 *
 * A hand-made laminate reaches less than these plies: measure (bench test), or give own values.
 */
import type { Makeup } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';

export type MaterialName = 'standard' | 'intermediate' | 'high' | 'aluminium';
export type LaminatePart = 'strut' | 'fuselage' | 'wing' | 'stabilizer';
export const LAMINATE_PARTS: readonly LaminatePart[] = ['strut', 'fuselage', 'wing', 'stabilizer'];

export interface Ply {
  along: number; // E1
  across: number; // E2
  shear: number; // G12
  poisson: number; // nu12
}

interface Stuff {
  label: string;
  ply: Ply | null; // null: the same in all directions
  modulus: number; // E along the fibre
  shear: number;
  poisson: number;
  strain: number; // at which it fails in compression, or yields
  density: number;
  source: string;
}

/** What a part is made of, as the beams need it. */
export interface Material {
  name: MaterialName;
  label: string;
  modulus: number; // E along the part
  across: number; // E square to it, in the plane of the laminate
  shear: number; // G
  poisson: number;
  strain: number;
  density: number;
  source: string;
  isOwn: boolean; // some value was given by the user
}

const carbon = (ply: Ply) => ({ ply, modulus: ply.along, shear: ply.shear, poisson: ply.poisson });

export const MATERIALS: Readonly<Record<MaterialName, Stuff>> = {
  standard: {
    label: 'carbon, standard modulus',
    ...carbon({ along: 181e9, across: 10.3e9, shear: 7.17e9, poisson: 0.28 }),
    strain: 0.0083,
    density: 1600,
    source:
      'T300/5208: S. W. Tsai, H. T. Hahn, Introduction to Composite Materials, 1980, table 1.7; compression 1500 MPa (from memory)',
  },
  intermediate: {
    label: 'carbon, intermediate modulus',
    ...carbon({ along: 203e9, across: 11.2e9, shear: 8.4e9, poisson: 0.32 }),
    strain: 0.0076,
    density: 1600,
    source: 'IM6/epoxy: S. W. Tsai, Composites Design, 1987, table B.1; compression 1540 MPa (from memory)',
  },
  high: {
    label: 'carbon, high modulus',
    ...carbon({ along: 220e9, across: 6.9e9, shear: 4.8e9, poisson: 0.25 }),
    strain: 0.0031,
    density: 1640,
    source:
      'H. A. Rasheed, Strengthening Design of Reinforced Concrete with FRP, 2015, table 3.10; compression 690 MPa (from memory)',
  },
  aluminium: {
    label: 'aluminium 6061-T6',
    ply: null,
    modulus: 68.9e9,
    shear: 26e9,
    poisson: 0.33,
    strain: 0.004,
    density: 2700,
    source: 'Aluminum Association typical values; strain at the yield of 276 MPa',
  },
};

/** Foam between skins: a rigid PVC foam of 80 kg/m3 (common practice). */
export const FOAM = {
  modulus: 70e6,
  shear: 25e6,
  density: 80,
  label: 'foam core, 80 kg/m3 (common practice)',
};

/** Shares of the plies by direction: common practice, and what one given share leaves to the other. */
export function layUp({ along, diagonal }: Makeup = {}): { along: number; diagonal: number } {
  const [usualAlong, usualDiagonal] = [
    RANGES['laminate.*.along'].default,
    RANGES['laminate.*.diagonal'].default,
  ];
  return {
    along: along ?? Math.min(usualAlong, 1 - (diagonal ?? usualDiagonal)),
    diagonal: diagonal ?? Math.min(usualDiagonal, 1 - (along ?? usualAlong)),
  };
}

export interface LaminateModuli {
  modulus: number;
  across: number;
  shear: number;
  poisson: number;
}

/** In-plane moduli of a balanced, symmetric stack: shares of plies along, at +-45 degrees, the rest across. */
export function laminateModuli(ply: Ply, along: number, diagonal: number): LaminateModuli {
  const across = Math.max(0, 1 - along - diagonal);
  const minor = (ply.poisson * ply.across) / ply.along;
  const base = 1 - ply.poisson * minor;
  const q11 = ply.along / base;
  const q22 = ply.across / base;
  const q12 = (ply.poisson * ply.across) / base;
  const q66 = ply.shear;
  const turned = (q11 + q22 + 2 * q12 + 4 * q66) / 4; // Q11 and Q22 of a ply at 45 degrees
  const a11 = along * q11 + across * q22 + diagonal * turned;
  const a22 = along * q22 + across * q11 + diagonal * turned;
  const a12 = (along + across) * q12 + (diagonal * (q11 + q22 + 2 * q12 - 4 * q66)) / 4;
  const a66 = (along + across) * q66 + (diagonal * (q11 + q22 - 2 * q12)) / 4;
  return {
    modulus: a11 - (a12 * a12) / a22,
    across: a22 - (a12 * a12) / a11,
    shear: a66,
    poisson: a12 / a22,
  };
}

/** The material of a part: the named stuff in the lay-up asked for, own values in place of its. */
export function materialOf(makeup: Makeup = {}): Material {
  const name = makeup.material ?? 'standard';
  const stuff = MATERIALS[name];
  const { along, diagonal } = layUp(makeup);
  const moduli = stuff.ply
    ? laminateModuli(stuff.ply, along, diagonal)
    : { modulus: stuff.modulus, across: stuff.modulus, shear: stuff.shear, poisson: stuff.poisson };
  const { modulus, shear, strain, density } = makeup;
  return {
    name,
    label: stuff.label,
    modulus: modulus ?? moduli.modulus,
    across: moduli.across,
    shear: shear ?? moduli.shear,
    // The Poisson's ratio of a +-45 stack would put a shear centre astray: it is held to what isotropic matter can have.
    poisson: Math.min(0.5, moduli.poisson),
    strain: strain ?? stuff.strain,
    density: density ?? stuff.density,
    source: stuff.source,
    isOwn: [modulus, shear, strain, density].some((value) => value !== undefined),
  };
}
