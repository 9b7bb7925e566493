/**
 * Forces from the outside: momentum and pressure through the six faces of a box round the vortices, which knows nothing
 * of what happens on a wing. The filaments' velocities are written down once more here, as thick filaments.
 *
 * A smooth solenoidal flow of total head p + V^2/2 = constant has, over any closed surface,
 *   -oint (V (V . n) + p n) dS = integral V x omega dV       (density 1),
 * that is, the force on all vorticity inside: the wing's bound vortices and what the trailing legs carry that are held
 * along x. A filament's vorticity is spread over a core (L. Rosenhead, Proc. Roy. Soc. A 127, 1930, 590): without one the
 * energy of the wake, and with it the drag, has no bound.
 *
 * Stream speed and density 1: forces in m2.
 */
export type Vector = [number, number, number];

/** Straight vortices a -> b and legs from a along +x; circulations right-handed about their direction. */
export interface Filaments {
  bound: Array<{ a: Vector; b: Vector; circulation: number }>;
  legs: Array<{ a: Vector; circulation: number }>;
}

const OVER_4_PI = 1 / (4 * Math.PI);

/** Adds the velocity of a bound segment of the given core (m) to `out`. */
function addBound({ a, b, circulation }: Filaments['bound'][number], at: Vector, core: number, out: Vector) {
  const [px, py, pz] = [at[0] - a[0], at[1] - a[1], at[2] - a[2]];
  const [qx, qy, qz] = [at[0] - b[0], at[1] - b[1], at[2] - b[2]];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
  const [ex, ey, ez] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length];
  const [cx, cy, cz] = [ey * pz - ez * py, ez * px - ex * pz, ex * py - ey * px];
  const start = (ex * px + ey * py + ez * pz) / Math.sqrt(px * px + py * py + pz * pz + core * core);
  const end = (ex * qx + ey * qy + ez * qz) / Math.sqrt(qx * qx + qy * qy + qz * qz + core * core);
  const strength = (OVER_4_PI * circulation * (start - end)) / (cx * cx + cy * cy + cz * cz + core * core);
  out[0] += strength * cx;
  out[1] += strength * cy;
  out[2] += strength * cz;
}

function addLeg({ a, circulation }: Filaments['legs'][number], at: Vector, core: number, out: Vector) {
  const [px, py, pz] = [at[0] - a[0], at[1] - a[1], at[2] - a[2]];
  const side = py * py + pz * pz + core * core;
  const strength = (OVER_4_PI * circulation * (1 + px / Math.sqrt(px * px + side))) / side;
  out[1] -= strength * pz;
  out[2] += strength * py;
}

/** Velocity at a point: the stream and all filaments, into `out`. */
export function velocityAt(
  filaments: Filaments,
  stream: Vector,
  core: number,
  at: Vector,
  out: Vector,
): void {
  [out[0], out[1], out[2]] = stream;
  for (const one of filaments.bound) addBound(one, at, core, out);
  for (const one of filaments.legs) addLeg(one, at, core, out);
}

/** Stations and weights of a line cut into panels of four Gauss points each. */
export interface Line {
  at: number[];
  weight: number[];
}

const GAUSS: Array<[at: number, weight: number]> = [
  [-0.8611363115940526, 0.3478548451374538],
  [-0.3399810435848563, 0.6521451548625461],
  [0.3399810435848563, 0.6521451548625461],
  [0.8611363115940526, 0.3478548451374538],
];

export function panels(edges: readonly number[]): Line {
  const at: number[] = [];
  const weight: number[] = [];
  for (let k = 0; k + 1 < edges.length; k++) {
    const half = (edges[k + 1]! - edges[k]!) / 2;
    for (const [x, w] of GAUSS) {
      at.push(edges[k]! + half * (1 + x));
      weight.push(w * half);
    }
  }
  return { at, weight };
}

/** Force on what a box holds; its edges along x, y and z are cut at the panels' ends. */
export function forceInBox(
  filaments: Filaments,
  stream: Vector,
  core: number,
  edges: readonly [number[], number[], number[]],
): Vector {
  const lines = edges.map(panels);
  const head = 0.5 * (stream[0] ** 2 + stream[1] ** 2 + stream[2] ** 2);
  const force: Vector = [0, 0, 0];
  const at: Vector = [0, 0, 0];
  const velocity: Vector = [0, 0, 0];
  for (const normal of [0, 1, 2]) {
    const [one, other] = [0, 1, 2].filter((axis) => axis !== normal) as [number, number];
    for (const [face, outward] of [
      [edges[normal]![0]!, -1],
      [edges[normal]!.at(-1)!, 1],
    ] as const)
      lines[one]!.at.forEach((u, i) => {
        lines[other]!.at.forEach((v, j) => {
          at[normal] = face;
          at[one] = u;
          at[other] = v;
          velocityAt(filaments, stream, core, at, velocity);
          const area = lines[one]!.weight[i]! * lines[other]!.weight[j]!;
          const through = outward * velocity[normal]! * area;
          const pressure = head - 0.5 * (velocity[0] ** 2 + velocity[1] ** 2 + velocity[2] ** 2);
          for (const axis of [0, 1, 2]) force[axis]! -= velocity[axis]! * through;
          force[normal]! -= outward * pressure * area;
        });
      });
  }
  return force;
}

/**
 * What the bound segments carry: circulation V x l in their middles. `withX`: with the velocity along x that they make
 * themselves, which the program leaves out.
 */
export function forceOnBound(filaments: Filaments, stream: Vector, core: number, withX: boolean): Vector {
  const force: Vector = [0, 0, 0];
  const [velocity, own]: [Vector, Vector] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (const { a, b, circulation } of filaments.bound) {
    const middle: Vector = [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1]), 0.5 * (a[2] + b[2])];
    velocityAt(filaments, stream, core, middle, velocity);
    velocityAt({ bound: filaments.bound, legs: [] }, [0, 0, 0], core, middle, own);
    const [x, y, z] = [velocity[0] - (withX ? 0 : own[0]), velocity[1], velocity[2]];
    const [lx, ly, lz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    force[0] += circulation * (y * lz - z * ly);
    force[1] += circulation * (z * lx - x * lz);
    force[2] += circulation * (x * ly - y * lx);
  }
  return force;
}

/** What the legs carry that lie inside the box, which ends at `end` (m): circulation V x l along them. */
export function forceOnLegs(filaments: Filaments, stream: Vector, core: number, end: number): Vector {
  const force: Vector = [0, 0, 0];
  const velocity: Vector = [0, 0, 0];
  for (const { a, circulation } of filaments.legs) {
    const length = end - a[0];
    // finer towards the wing, where the bound vortices' velocity changes fast
    const { at, weight } = panels([0, 0.01, 0.03, 0.08, 0.2, 0.5, 1].map((share) => a[0] + share * length));
    at.forEach((x, k) => {
      velocityAt(filaments, stream, core, [x, a[1], a[2]], velocity);
      force[1] += circulation * weight[k]! * velocity[2];
      force[2] -= circulation * weight[k]! * velocity[1];
    });
  }
  return force;
}
