/**
 * What a foil that gives comes to in the end: flow (flow-answers.ts) and structure in balance about a running state. With
 * shapes of unit stiffness (structure/shapes.ts), sizes a, and P = rho V^2:
 *
 *   a = P (Q a + G a + q)    Q forces of the shapes on one another, G what running loads do to stiffness, q the cause
 *
 * R. L. Bisplinghoff, H. Ashley, R. L. Halfman, Aeroelasticity, 1955, ch. 8.
 */
import type { Craft } from '../geometry/craft.ts';
import { factor, solveFactored } from '../numeric/dense.ts';
import { eigenvalues } from '../numeric/eigen.ts';
import type { Part } from '../structure/parts.ts';
import { pressMatrix } from '../structure/press.ts';
import { type Shape, type Symmetry, shapesOf } from '../structure/shapes.ts';
import type { Skeleton } from '../structure/skeleton.ts';
import type { Flow } from '../vortex/flow.ts';
import { type Answer, FlowAnswers, type Total } from './flow-answers.ts';

/** One symmetry class at one running state; what holds for FlowAnswers holds here. */
export class ElasticFlow extends FlowAnswers {
  readonly answers: readonly Answer[]; // to each shape, at rest in it
  readonly matrix: Float64Array; // Q + G
  private readonly moves: readonly Float64Array[]; // of the places where segments carry their force, by shape

  constructor(
    flow: Flow,
    alpha: number,
    craft: Craft,
    skeleton: Skeleton,
    symmetry: Symmetry,
    hasStrut: boolean,
    readonly shapes: readonly Shape[] = shapesOf(skeleton, symmetry),
  ) {
    super(flow, alpha, craft, skeleton, symmetry, hasStrut);
    this.moves = shapes.map(({ motion }) => this.movesOf(motion));
    this.answers = shapes.map(({ motion }) => this.atRest(motion));
    const n = shapes.length;
    this.matrix = pressMatrix(skeleton.frame, shapes, this.runningPoints());
    this.answers.forEach(({ forces }, column) => {
      for (let row = 0; row < n; row++) this.matrix[row * n + column]! += this.work(this.moves[row]!, forces);
    });
  }

  /** Sizes of the shapes in the end under a cause; `parts`: what may give, all when left out. `pressure` rho V^2. */
  sizes(cause: Answer, pressure: number, parts?: ReadonlySet<Part>): Float64Array {
    const chosen = this.chosen(parts);
    const n = chosen.length;
    const total = this.shapes.length;
    const system = new Float64Array(n * n);
    const right = Float64Array.from(chosen, (k) => pressure * this.work(this.moves[k]!, cause.forces));
    chosen.forEach((row, i) => {
      chosen.forEach((column, j) => {
        system[i * n + j] = (i === j ? 1 : 0) - pressure * this.matrix[row * total + column]!;
      });
    });
    const pivots = new Int32Array(n);
    if (n > 0) {
      factor(system, n, pivots);
      solveFactored(system, n, pivots, right);
    }
    const sizes = new Float64Array(total);
    chosen.forEach((k, i) => {
      sizes[k] = right[i]!;
    });
    return sizes;
  }

  /** The cause's total with what the given-way foil adds. */
  flexed(cause: Answer, pressure: number, parts?: ReadonlySet<Part>): Total {
    const sizes = this.sizes(cause, pressure, parts);
    const total: Total = { force: [...cause.total.force], moment: [...cause.total.moment] };
    this.answers.forEach((answer, k) => {
      for (const i of [0, 1, 2] as const) {
        total.force[i] += sizes[k]! * answer.total.force[i];
        total.moment[i] += sizes[k]! * answer.total.moment[i];
      }
    });
    return total;
  }

  /** Largest growth per rho V^2: at P times it = 1 the foil gives way. 0 where the flow stiffens every shape. */
  growth(parts?: ReadonlySet<Part>): number {
    const chosen = this.chosen(parts);
    const n = chosen.length;
    const matrix = new Float64Array(n * n);
    chosen.forEach((row, i) => {
      chosen.forEach((column, j) => {
        matrix[i * n + j] = this.matrix[row * this.shapes.length + column]!;
      });
    });
    return eigenvalues(matrix, n).reduce(
      (most, { real, imaginary }) => (imaginary === 0 && real > most ? real : most),
      0,
    );
  }

  chosen(parts?: ReadonlySet<Part>): number[] {
    return [...this.shapes.keys()].filter((k) => !parts || parts.has(this.shapes[k]!.part));
  }
}
