/**
 * What one straight panel of vortices or sources does at a point: the only place where it is written down.
 *
 *                . point            x1, x2: distance of the point past the panel's start and end, along the panel
 *               /|                  h: height of the point to the left of the panel
 *         r1  /  | h   \ r2         log1, log2: ln of the squared distances
 *           /____|_______\
 *    start  x1      (-x2)   end     Outlines run from the trailing edge over the upper side to the nose and back
 *                                   below: the inside of the section lies to the left.
 *
 * Vortices count clockwise, sources outward. All values are per unit strength and want dividing by 2 pi.
 * J. Katz and A. Plotkin, Low-Speed Aerodynamics, 2nd ed. 2001, ch. 10; integrated here for the stream function.
 */
export class PanelSight {
  size = 0;
  tangentX = 0;
  tangentY = 0;
  private x1 = 0;
  private x2 = 0;
  private h = 0;
  private log1 = 0;
  private log2 = 0;

  /** Turns to the panel from (ax, ay) to (bx, by), seen from the point (px, py). */
  look(px: number, py: number, ax: number, ay: number, bx: number, by: number): void {
    this.size = Math.hypot(bx - ax, by - ay);
    this.tangentX = (bx - ax) / this.size;
    this.tangentY = (by - ay) / this.size;
    const dx = px - ax;
    const dy = py - ay;
    this.x1 = dx * this.tangentX + dy * this.tangentY;
    this.x2 = this.x1 - this.size;
    const isEnd = (px === ax && py === ay) || (px === bx && py === by);
    this.h = isEnd ? 0 : dy * this.tangentX - dx * this.tangentY;
    this.log1 = safeLog(this.x1 * this.x1 + this.h * this.h);
    this.log2 = safeLog(this.x2 * this.x2 + this.h * this.h);
  }

  /** Stream function of even vortices, which is also the potential of even sources: the integral of ln r. */
  evenLog(): number {
    const { x1, x2, h, log1, log2 } = this;
    return 0.5 * (x1 * log1 - x2 * log2) - this.size + h * this.subtended();
  }

  /** Stream function of vortices that grow from 0 at the start to 1 at the end; `even` is `evenLog`. */
  risingLog(even: number): number {
    const { x1, x2, h, log1, log2 } = this;
    const moment = 0.25 * ((x1 * x1 + h * h) * (log1 - 1) - (x2 * x2 + h * h) * (log2 - 1));
    return (x1 * even - moment) / this.size;
  }

  /**
   * Stream function of even sources: the integral of the point's direction as seen from the panel. Directions jump by
   * a full turn to the right of the panel only: smooth for points on and inside the outline.
   */
  angleFromInside(): number {
    const { x1, x2, h, log1, log2 } = this;
    const a1 = 0.5 * Math.PI - Math.atan2(x1, h);
    const a2 = 0.5 * Math.PI - Math.atan2(x2, h);
    return x1 * a1 - x2 * a2 + 0.5 * h * (log1 - log2);
  }

  /** The same, but directions jump ahead of the panel only: smooth for points that a wake leaves behind. */
  angleFromBehind(): number {
    const { x1, x2, h, log1, log2 } = this;
    return x1 * Math.atan2(-h, -x1) - x2 * Math.atan2(-h, -x2) + 0.5 * h * (log1 - log2);
  }

  /** Velocity of even sources along the panel; the velocity across it, to its left, is `subtended`. */
  spread(): number {
    return 0.5 * (this.log1 - this.log2);
  }

  /** Angle under which the panel is seen, positive from its left; also the velocity of even vortices along it. */
  subtended(): number {
    return Math.atan2(this.h * this.size, this.x1 * this.x2 + this.h * this.h);
  }

  /** Velocity along the panel of vortices that grow from 0 at its start to 1 at its end. */
  risingAlong(): number {
    return (this.x1 * this.subtended() - this.h * this.spread()) / this.size;
  }

  /** Velocity of the same to the left of the panel. */
  risingAcross(): number {
    return 1 - (this.x1 * this.spread() + this.h * this.subtended()) / this.size;
  }
}

/** Logarithm of a squared distance, 0 at no distance: every use multiplies it by something that vanishes there. */
function safeLog(q: number): number {
  return q > 0 ? Math.log(q) : 0;
}
