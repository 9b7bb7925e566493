/** The foil in the scene: wing, stabilizer, fuselage and strut, each made anew only when its part of the design is another. */
import { BufferAttribute, BufferGeometry, Group, type Material, Mesh } from 'three';
import { toCreasedNormals } from 'three/addons/utils/BufferGeometryUtils.js';
import type { Design, Fuselage, Planform, Strut } from '../../solver/design/document.ts';
import { fuselageBody, fuselageEnd, strutBody } from '../../solver/geometry/bodies.ts';
import { type Skin, skinOf } from '../../solver/geometry/skin.ts';
import type { Mesh as Triangles } from '../../solver/geometry/triangles.ts';
import { SkinMesh } from './skin-mesh.ts';

const WING = { rings: 44, around: 65 };
const STABILIZER = { rings: 32, around: 49 };
const SHOWN = { tolerance: 1e-5, around: 48 };
const CREASE = 0.6; // rad: sharper edges are shown as edges

export interface FoilMaterials {
  wing: Material;
  stabilizer: Material;
  body: Material;
}

export class FoilMesh {
  readonly group = new Group();
  readonly wing: SkinMesh;
  readonly stabilizer: SkinMesh;
  readonly #strut: Mesh<BufferGeometry, Material>;
  readonly #fuselage: Mesh<BufferGeometry, Material>;
  #drawn: Planform[] = [];
  #bodies: { strut: Strut | null; fuselage: Fuselage | null; end: number } | null = null;

  constructor(materials: FoilMaterials) {
    this.wing = new SkinMesh(WING, materials.wing);
    this.stabilizer = new SkinMesh(STABILIZER, materials.stabilizer);
    this.#strut = new Mesh(new BufferGeometry(), materials.body);
    this.#fuselage = new Mesh(new BufferGeometry(), materials.body);
    this.group.add(this.wing.group, this.stabilizer.group, this.#strut, this.#fuselage);
  }

  set renderOrder(order: number) {
    for (const part of [this.wing, this.stabilizer, this.#strut, this.#fuselage]) part.renderOrder = order;
  }

  /** Takes the shape of a design; a surface that cannot be drawn keeps the shape it had. */
  show(design: Design): void {
    const { wing, stabilizer, strut, fuselage } = design;
    const tail = stabilizer && attempt(() => skinOf(stabilizer, stabilizer));
    this.#fill(this.wing, 0, wing, () => attempt(() => skinOf(wing)));
    if (stabilizer) this.#fill(this.stabilizer, 1, stabilizer, () => tail);
    this.stabilizer.group.visible = stabilizer !== null;
    const end = fuselage ? fuselageEnd(design, tail) : 0;
    const known = this.#bodies;
    if (!known || known.strut !== strut) replace(this.#strut, strut && strutBody(strut, SHOWN));
    if (!known || known.fuselage !== fuselage || known.end !== end)
      replace(this.#fuselage, fuselageBody(design, tail, SHOWN));
    this.#bodies = { strut, fuselage, end };
  }

  /** Shows strut and fuselage only where they are not those of another design, which would lie in the same place. */
  showBodiesUnlike(design: Design): void {
    this.#strut.visible = JSON.stringify(this.#bodies?.strut) !== JSON.stringify(design.strut);
    this.#fuselage.visible = JSON.stringify(this.#bodies?.fuselage) !== JSON.stringify(design.fuselage);
  }

  dispose(): void {
    this.wing.dispose();
    this.stabilizer.dispose();
    this.#strut.geometry.dispose();
    this.#fuselage.geometry.dispose();
  }

  #fill(mesh: SkinMesh, at: number, planform: Planform, skin: () => Skin | null): void {
    if (this.#drawn[at] === planform) return;
    const made = skin();
    if (!made) return;
    mesh.fill(made, planform);
    this.#drawn[at] = planform;
  }
}

function replace(mesh: Mesh<BufferGeometry, Material>, body: Triangles | null): void {
  mesh.geometry.dispose();
  mesh.geometry = new BufferGeometry();
  mesh.visible = body !== null;
  if (!body) return;
  mesh.geometry.setAttribute('position', new BufferAttribute(Float32Array.from(body.points), 3));
  mesh.geometry.setIndex(new BufferAttribute(body.corners, 1));
  mesh.geometry = toCreasedNormals(mesh.geometry, CREASE);
}

function attempt<Value>(work: () => Value): Value | null {
  try {
    return work();
  } catch {
    return null; // an unreachable drop or length: the page says so elsewhere
  }
}
