/** One surface in the scene: its shell, the lines drawn on it, what is painted on it. Filled in place as it moves. */
import {
  BufferAttribute,
  BufferGeometry,
  CanvasTexture,
  DynamicDrawUsage,
  Group,
  LineBasicMaterial,
  LineSegments,
  type Material,
  Mesh,
  SRGBColorSpace,
} from 'three';
import type { Planform } from '../../solver/design/document.ts';
import { fillShell, makeShell, placeOf, type Shell, type ShellSize } from '../../solver/geometry/shell.ts';
import type { Skin } from '../../solver/geometry/skin.ts';
import { makeSkinCanvas } from './skin-canvas.ts';

const RIBS = [0, 0.25, 0.5, 0.75, 1]; // eta of the sections drawn as lines

export class SkinMesh {
  readonly group = new Group();
  /** Made when something is painted for the first time. */
  texture: CanvasTexture<HTMLCanvasElement> | null = null;
  readonly lines = new LineBasicMaterial({ transparent: true });
  readonly #shell: Shell;
  readonly #mesh: Mesh<BufferGeometry, Material>;
  readonly #drawn: LineSegments<BufferGeometry, LineBasicMaterial>;

  constructor(size: ShellSize, material: Material) {
    this.#shell = makeShell(size);
    const { positions, normals, places, corners } = this.#shell;
    const attribute = (values: Float32Array, each: number) =>
      new BufferAttribute(values, each).setUsage(DynamicDrawUsage);
    const position = attribute(positions, 3);
    const skin = new BufferGeometry();
    skin.setAttribute('position', position);
    skin.setAttribute('normal', attribute(normals, 3));
    skin.setAttribute('uv', attribute(places, 2));
    skin.setIndex(new BufferAttribute(corners, 1));
    const drawn = new BufferGeometry();
    drawn.setAttribute('position', position);
    drawn.setIndex(new BufferAttribute(lineCorners(size, positions.length / 6), 1));
    this.#mesh = new Mesh(skin, material);
    this.#drawn = new LineSegments(drawn, this.lines);
    // A surface is in sight whenever the foil is: no bounds to keep up.
    this.#mesh.frustumCulled = false;
    this.#drawn.frustumCulled = false;
    this.group.add(this.#mesh, this.#drawn);
  }

  get material(): Material {
    return this.#mesh.material;
  }

  set material(material: Material) {
    this.#mesh.material = material;
  }

  set renderOrder(order: number) {
    this.#mesh.renderOrder = order;
    this.#drawn.renderOrder = order;
  }

  fill(skin: Skin, planform: Planform): void {
    fillShell(this.#shell, skin, planform);
    for (const attribute of Object.values(this.#mesh.geometry.attributes)) attribute.needsUpdate = true;
  }

  /** Paints by means of `draw`; the texture then holds what it drew. */
  paint(draw: (canvas: HTMLCanvasElement) => void): CanvasTexture {
    if (!this.texture) {
      this.texture = new CanvasTexture(makeSkinCanvas());
      this.texture.colorSpace = SRGBColorSpace;
      this.texture.flipY = false;
      this.texture.anisotropy = 4;
    }
    draw(this.texture.image);
    this.texture.needsUpdate = true;
    return this.texture;
  }

  dispose(): void {
    this.#mesh.geometry.dispose();
    this.#drawn.geometry.dispose();
    this.lines.dispose();
    this.texture?.dispose();
  }
}

/** Both edges and a few sections, on both halves, as pairs of points. */
function lineCorners({ rings, around }: ShellSize, half: number): Uint16Array {
  const corners: number[] = [];
  const polyline = (points: readonly number[]) => {
    for (let k = 1; k < points.length; k++) corners.push(points[k - 1]!, points[k]!);
  };
  const counted = (count: number, at: (k: number) => number) =>
    Array.from({ length: count }, (_, k) => at(k));
  for (const start of [0, half]) {
    polyline(counted(rings, (ring) => start + ring * around));
    polyline(counted(rings, (ring) => start + ring * around + (around - 1) / 2));
    for (const eta of start === 0 ? RIBS : RIBS.slice(1)) {
      const ring = Math.round(placeOf(eta) * (rings - 1));
      polyline(counted(around, (k) => start + ring * around + k));
    }
  }
  return Uint16Array.from(corners);
}
