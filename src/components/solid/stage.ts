/**
 * The scene on a canvas: foil, ghost, water, light. Draws when told to and at no other time. Lengths in m, z up.
 * Materials take their colours from custom properties by way of `colour`.
 */
import {
  Color,
  DirectionalLight,
  HemisphereLight,
  MeshLambertMaterial,
  MeshStandardMaterial,
  PerspectiveCamera,
  Scene,
  Vector3,
  WebGLRenderer,
} from 'three';
import type { Design } from '../../solver/design/document.ts';
import { cruiseDepth } from '../head-on-parts.ts';
import { axesOf, eyeOf, HALF_SIGHT, type Pose } from './camera.ts';
import { FoilMesh } from './foil-mesh.ts';
import { reachOf } from './framing.ts';
import type { SkinPart } from './paint.ts';
import type { Colour } from './skin-canvas.ts';
import type { SkinMesh } from './skin-mesh.ts';
import { WaterMesh } from './water-mesh.ts';

/** Draws a part's unrolled skin; null: the part stays plain. */
export type SkinPainter = Record<SkinPart, ((canvas: HTMLCanvasElement) => void) | null>;

const SHARPEST = 2; // device pixels to a CSS pixel: more is not seen and costs four times the work
const PLAIN_LIGHT = { sky: 1.5, sun: 1.9, fill: 0.9 };
const EVEN_LIGHT = { sky: 2.7, sun: 0.5, fill: 0 }; // under paint, whose shades mean something

/** Skins stand back a little, so that the lines on them are whole. */
const BEHIND_LINES = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 };

/** Throws an Error where the browser gives no WebGL. */
export class Stage {
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera((2 * HALF_SIGHT * 180) / Math.PI, 1, 0.01, 100);
  readonly #sky = new HemisphereLight();
  readonly #sun = new DirectionalLight();
  readonly #fill = new DirectionalLight();
  readonly #plain = {
    wing: new MeshStandardMaterial({ roughness: 0.42, ...BEHIND_LINES }),
    stabilizer: new MeshStandardMaterial({ roughness: 0.42, ...BEHIND_LINES }),
    body: new MeshStandardMaterial({ roughness: 0.6, ...BEHIND_LINES }),
  };
  readonly #painted = {
    wing: new MeshLambertMaterial(BEHIND_LINES),
    stabilizer: new MeshLambertMaterial(BEHIND_LINES),
  };
  readonly #clear = new MeshLambertMaterial({
    transparent: true,
    opacity: 0.3,
    depthWrite: false,
    polygonOffset: true,
    polygonOffsetFactor: 4,
    polygonOffsetUnits: 4,
  });
  readonly #foil = new FoilMesh(this.#plain);
  readonly #water = new WaterMesh();
  #ghost: FoilMesh | null = null;
  #colour: Colour = () => 'white';
  #isPainted = false;
  #size = '';

  constructor(readonly canvas: HTMLCanvasElement) {
    const context = canvas.getContext('webgl2', {
      alpha: true,
      antialias: true,
      powerPreference: 'low-power',
    });
    if (!context) throw new Error('no WebGL');
    this.#renderer = new WebGLRenderer({ canvas, context, alpha: true });
    this.#renderer.setClearColor(new Color(0), 0);
    this.#camera.matrixAutoUpdate = false;
    this.#foil.wing.lines.opacity = 0.5;
    this.#foil.stabilizer.lines.opacity = 0.5;
    this.#scene.add(this.#sky, this.#sun, this.#fill, this.#foil.group, this.#water.group);
    this.#light();
  }

  get isLost(): boolean {
    return this.#renderer.getContext().isContextLost();
  }

  show(design: Design): void {
    this.#foil.show(design);
    const x = 0.4 * (design.stabilizer?.arm ?? 0);
    this.#water.show(cruiseDepth(design), x, reachOf(design), design.strut);
  }

  showGhost(ghost: Design | null, design: Design): void {
    if (!ghost) {
      if (this.#ghost) this.#ghost.group.visible = false;
      return;
    }
    if (!this.#ghost) {
      this.#ghost = new FoilMesh({ wing: this.#clear, stabilizer: this.#clear, body: this.#clear });
      this.#ghost.renderOrder = 1;
      this.#scene.add(this.#ghost.group);
      this.colour(this.#colour);
    }
    this.#ghost.group.visible = true;
    this.#ghost.show(ghost);
    this.#ghost.showBodiesUnlike(design);
  }

  paint(painter: SkinPainter | null): void {
    for (const part of ['wing', 'stabilizer'] as const)
      this.#paintPart(part, this.#foil[part], painter?.[part]);
    this.#isPainted = painter !== null;
    this.#light();
  }

  colour(colour: Colour): void {
    this.#colour = colour;
    this.#plain.wing.color.set(colour('--solid-wing'));
    this.#plain.stabilizer.color.set(colour('--tail'));
    this.#plain.body.color.set(colour('--solid-body'));
    this.#clear.color.set(colour('--ghost'));
    this.#light();
    for (const { lines } of [this.#foil.wing, this.#foil.stabilizer]) lines.color.set(colour('--ink'));
    if (this.#ghost)
      for (const { lines } of [this.#ghost.wing, this.#ghost.stabilizer]) lines.color.set(colour('--ghost'));
    this.#water.colour(colour);
  }

  /** Draws at a size in CSS px; `sharpness`: device pixels to each. */
  draw(pose: Pose, width: number, height: number, sharpness = devicePixelRatio): void {
    const ratio = Math.min(SHARPEST, sharpness);
    const size = `${width} ${height} ${ratio}`;
    // Setting the same size once more would take a new buffer.
    if (size !== this.#size) {
      this.#renderer.setPixelRatio(ratio);
      this.#renderer.setSize(width, height, false);
      this.#size = size;
    }
    this.#look(pose, width / height);
    this.#renderer.render(this.#scene, this.#camera);
  }

  /** Gives back all that the graphics hold, the context included. */
  dispose(): void {
    this.#foil.dispose();
    this.#ghost?.dispose();
    this.#water.dispose();
    for (const material of [...Object.values(this.#plain), ...Object.values(this.#painted), this.#clear])
      material.dispose();
    this.#renderer.dispose();
    this.#renderer.forceContextLoss();
  }

  #paintPart(part: SkinPart, mesh: SkinMesh, draw: SkinPainter[SkinPart] | undefined): void {
    if (!draw) {
      mesh.material = this.#plain[part];
      return;
    }
    const material = this.#painted[part];
    const texture = mesh.paint(draw);
    if (material.map !== texture) {
      material.map = texture;
      material.needsUpdate = true;
    }
    mesh.material = material;
  }

  #light(): void {
    const { sky, sun, fill } = this.#isPainted ? EVEN_LIGHT : PLAIN_LIGHT;
    this.#sky.intensity = sky;
    this.#sun.intensity = sun;
    this.#fill.intensity = fill;
    const below = this.#isPainted ? '--solid-sky' : '--solid-deep';
    this.#sky.color.set(this.#colour('--solid-sky'));
    this.#sky.groundColor.set(this.#colour(below));
  }

  #look(pose: Pose, aspect: number): void {
    const { right, up, back } = axesOf(pose);
    const distance = Math.exp(pose.range);
    this.#camera.matrix.makeBasis(new Vector3(...right), new Vector3(...up), new Vector3(...back));
    this.#camera.matrix.setPosition(...eyeOf(pose));
    this.#camera.aspect = aspect;
    this.#camera.near = Math.max(0.01, distance - 8);
    this.#camera.far = distance + 12;
    this.#camera.updateProjectionMatrix();
    this.#camera.updateMatrixWorld(true);
    // Over the left shoulder, a little from the right: a part is shaded the same way from wherever it is looked at.
    const from = (light: DirectionalLight, nearness: number, aside: number, above: number) => {
      const at = (axis: 0 | 1 | 2) => nearness * back[axis] + aside * right[axis] + above * up[axis];
      light.position.set(at(0), at(1), at(2));
    };
    from(this.#sun, 0.9, -0.45, 0.8);
    from(this.#fill, 0.5, 1, 0.1);
  }
}
