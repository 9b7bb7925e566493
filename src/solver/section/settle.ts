/**
 * Fixed points of a slowly contracting map x -> g(x), found faster from the last few tries: D. G. Anderson, J. ACM 12
 * (1965) 547, in the difference form of H. F. Walker and P. Ni, SIAM J. Numer. Anal. 49 (2011) 1715, Algorithm AA.
 */
export class Settler {
  private kept = 0;
  private readonly changes: Float64Array[]; // of the residual g(x) - x
  private readonly moves: Float64Array[]; // of g(x)
  private readonly lastResidual: Float64Array;
  private readonly lastImage: Float64Array;
  private readonly gram: Float64Array;
  private readonly weights: Float64Array;
  private started = false;

  constructor(
    readonly size: number,
    readonly depth: number,
  ) {
    this.changes = Array.from({ length: depth }, () => new Float64Array(size));
    this.moves = Array.from({ length: depth }, () => new Float64Array(size));
    this.lastResidual = new Float64Array(size);
    this.lastImage = new Float64Array(size);
    this.gram = new Float64Array(depth * (depth + 1));
    this.weights = new Float64Array(depth);
  }

  /** Forgets all tries. */
  restart(): void {
    this.kept = 0;
    this.started = false;
  }

  /** Starts on another map close to the last: its tries still say how the residual changes. */
  turn(): void {
    this.started = false;
  }

  /** Replaces x by the next try, given its image g(x). `scale` weighs the entries of the residual. */
  propose(x: Float64Array, image: Float64Array): void {
    const { size, depth, lastResidual, lastImage } = this;
    if (this.started) {
      if (this.kept === depth) {
        this.changes.push(this.changes.shift()!);
        this.moves.push(this.moves.shift()!);
      } else this.kept++;
      const change = this.changes[this.kept - 1]!;
      const move = this.moves[this.kept - 1]!;
      for (let i = 0; i < size; i++) {
        change[i] = image[i]! - x[i]! - lastResidual[i]!;
        move[i] = image[i]! - lastImage[i]!;
      }
    }
    for (let i = 0; i < size; i++) {
      lastResidual[i] = image[i]! - x[i]!;
      lastImage[i] = image[i]!;
    }
    this.started = true;
    x.set(image);
    this.fitResidual();
    for (let k = 0; k < this.kept; k++) {
      const weight = this.weights[k]!;
      const move = this.moves[k]!;
      for (let i = 0; i < size; i++) x[i]! -= weight * move[i]!;
    }
  }

  /** Weights with which the kept changes make up the last residual best, by normal equations slightly stiffened. */
  private fitResidual(): void {
    const { size, kept, changes, gram: a, weights } = this;
    const stride = kept + 1;
    for (let r = 0; r < kept; r++)
      for (let c = r; c <= kept; c++) {
        const one = changes[r]!;
        const other = c < kept ? changes[c]! : this.lastResidual;
        let sum = 0;
        for (let i = 0; i < size; i++) sum += one[i]! * other[i]!;
        a[r * stride + c] = r === c ? sum * (1 + 1e-10) : sum;
        if (c < kept) a[c * stride + r] = a[r * stride + c]!;
      }
    for (let p = 0; p < kept; p++)
      for (let r = p + 1; r < kept; r++) {
        const share = a[r * stride + p]! / a[p * stride + p]!;
        for (let c = p; c <= kept; c++) a[r * stride + c]! -= share * a[p * stride + c]!;
      }
    for (let r = kept - 1; r >= 0; r--) {
      let sum = a[r * stride + kept]!;
      for (let c = r + 1; c < kept; c++) sum -= a[r * stride + c]! * weights[c]!;
      weights[r] = sum / a[r * stride + r]!;
    }
  }
}
