/** The water surface: a calm disc that fades outward, and the line where it meets the strut. */
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Group,
  LineBasicMaterial,
  LineLoop,
  Mesh,
  MeshBasicMaterial,
  RingGeometry,
} from 'three';
import type { Strut } from '../../solver/design/document.ts';
import { strutLoop } from '../../solver/geometry/bodies.ts';
import type { Colour } from './skin-canvas.ts';

const CLEAR = 0.28; // opacity in the middle

export class WaterMesh {
  readonly group = new Group();
  readonly #surface = new MeshBasicMaterial({
    transparent: true,
    opacity: CLEAR,
    vertexColors: true,
    depthWrite: false,
    dithering: true,
    side: DoubleSide,
  });
  readonly #line = new LineBasicMaterial();
  readonly #disc = new Mesh(fadingDisc(), this.#surface);
  readonly #ring = new LineLoop(new BufferGeometry(), this.#line);
  #strut: Strut | null = null;

  constructor() {
    this.group.add(this.#disc, this.#ring);
    this.#disc.renderOrder = 2; // over the foil and its ghost
    this.#ring.frustumCulled = false;
  }

  /** The surface over a foil whose origin is `depth` m below it; null: too far to be shown. */
  show(depth: number | null, x: number, reach: number, strut: Strut | null): void {
    this.group.visible = depth !== null;
    if (depth === null) return;
    this.#disc.position.set(x, 0, depth);
    this.#disc.scale.setScalar(reach);
    this.#ring.visible = strut !== null && depth < strut.length;
    this.#ring.position.set(strut?.x ?? 0, 0, depth);
    if (!strut || strut === this.#strut) return;
    this.#strut = strut;
    const points = strutLoop(strut, 5e-5).flatMap(([along, across]) => [along, across, 0]);
    this.#ring.geometry.dispose();
    this.#ring.geometry = new BufferGeometry();
    this.#ring.geometry.setAttribute('position', new BufferAttribute(Float32Array.from(points), 3));
  }

  colour(colour: Colour): void {
    this.#surface.color.set(colour('--surface'));
    this.#line.color.set(colour('--surface'));
  }

  dispose(): void {
    this.#disc.geometry.dispose();
    this.#ring.geometry.dispose();
    this.#surface.dispose();
    this.#line.dispose();
  }
}

/** A disc of radius 1 in the plane z = 0, white, its opacity falling to nothing at the rim. */
function fadingDisc(): BufferGeometry {
  const disc = new RingGeometry(0, 1, 64, 40);
  const position = disc.getAttribute('position');
  const colours = new Float32Array(4 * position.count).fill(1);
  for (let k = 0; k < position.count; k++) {
    const radius = Math.min(1, Math.hypot(position.getX(k), position.getY(k)));
    colours[4 * k + 3] = (1 - radius * radius) ** 1.5;
  }
  disc.setAttribute('color', new BufferAttribute(colours, 4));
  return disc;
}
