/**
 * How the outer flow answers the boundary layer: displaced water acts as outflow through the surface, and changes the
 * speed everywhere (M. J. Lighthill, J. Fluid Mech. 4 (1958) 383).
 *
 * The mass defect m = speed times displacement thickness is given at the stations: the nodes of the panels, then the
 * wake's. Along a panel the outflow is the rise of m over its length. On the surface m counts like the speed, positive
 * on water moving clockwise; the wake's m is that of both its halves and starts with the sum of the two sides and the
 * base. So everything is linear, and the stagnation point needs no mention:
 *
 *   speed at station i = inviscid speed + sum over j of change[i, j] m_j
 *
 * The wake is a fixed line (wake-line.ts); its inviscid speed is taken as the size of the velocity there. The pressure
 * difference across a curved wake is left out.
 */
import { PanelSight } from './influence.ts';
import type { PanelFlow } from './pressure.ts';
import { drawWake } from './wake-line.ts';

const OVER_2_PI = 0.5 / Math.PI;

export class MassResponse {
  readonly surface: number; // nodes on the section
  readonly stations: number; // these and the wake's, trailing edge left out
  readonly columns: number; // entries of m: surface nodes, trailing edge as the wake sees it, wake stations
  readonly change: Float64Array; // stations by columns
  /** Wake nodes from the trailing edge (0) on. */
  readonly wakeX: Float64Array;
  readonly wakeY: Float64Array;
  readonly wakeArc: Float64Array;
  private readonly sight = new PanelSight();
  /** Velocity at the wake's stations (x, y by turns) in a stream of speed 1 along x, and along y. */
  private readonly wakeAlongX: Float64Array;
  private readonly wakeAlongY: Float64Array;

  constructor(
    readonly flow: PanelFlow,
    readonly wake: number, // stations in the wake
  ) {
    const n = flow.nodes;
    this.surface = n;
    this.stations = n + wake;
    this.columns = n + 1 + wake;
    this.change = new Float64Array(this.stations * this.columns);
    const line = drawWake(flow, wake);
    this.wakeX = line.x;
    this.wakeY = line.y;
    this.wakeArc = line.arc;
    this.fillSurface();
    const view = this.seeStrengths();
    this.wakeAlongX = this.wakeVelocity(view, flow.alongX, 1, 0);
    this.wakeAlongY = this.wakeVelocity(view, flow.alongY, 0, 1);
    this.fillWake(view);
  }

  /** Inviscid speed at all stations at an angle of attack, rad. */
  speeds(alpha: number, out: Float64Array): void {
    this.flow.speeds(alpha, out);
    const c = Math.cos(alpha);
    const s = Math.sin(alpha);
    for (let k = 0; k < this.wake; k++) {
      const u = c * this.wakeAlongX[2 * k]! + s * this.wakeAlongY[2 * k]!;
      const v = c * this.wakeAlongX[2 * k + 1]! + s * this.wakeAlongY[2 * k + 1]!;
      out[this.surface + k] = Math.hypot(u, v);
    }
  }

  /** Rows of the surface: the strengths that make the outline a streamline again. */
  private fillSurface(): void {
    const { flow, surface: n, wake, columns, change } = this;
    const { count, length } = flow.panels;
    const fromWake = this.wakeStreamFunction();
    const rise = new Float64Array(n);
    for (let j = 0; j < columns; j++) {
      for (let i = 0; i < n; i++) {
        if (j < n) {
          const before = j > 0 ? flow.outflow[i * count + j - 1]! / length[j - 1]! : 0;
          const after = j < count ? flow.outflow[i * count + j]! / length[j]! : 0;
          rise[i] = before - after; // clockwise m falls along a panel that emits
        } else {
          const k = j - n;
          const before = k > 0 ? fromWake[i * wake + k - 1]! : 0;
          const after = k < wake ? fromWake[i * wake + k]! : 0;
          rise[i] = after - before;
        }
      }
      const strength = flow.solve(rise);
      for (let i = 0; i < n; i++) change[i * columns + j] = strength[i]!;
    }
  }

  /** Stream function at the nodes (rows) of outflow 1 in all from each panel of the wake. */
  private wakeStreamFunction(): Float64Array {
    const { flow, surface: n, wake, wakeX, wakeY, sight } = this;
    const { x, y } = flow.panels;
    const out = new Float64Array(n * wake);
    for (let i = 0; i < n; i++)
      for (let k = 0; k < wake; k++) {
        sight.look(x[i]!, y[i]!, wakeX[k]!, wakeY[k]!, wakeX[k + 1]!, wakeY[k + 1]!);
        out[i * wake + k] = (OVER_2_PI * sight.angleFromBehind()) / sight.size;
      }
    return out;
  }

  /** Velocity at the wake's stations of unit strength at each node: rows 2k (x) and 2k + 1 (y), base included. */
  private seeStrengths(): Float64Array {
    const { flow, surface: n, wake, wakeX, wakeY, sight } = this;
    const { x, y, count, gap } = flow.panels;
    const view = new Float64Array(2 * wake * n);
    for (let k = 0; k < wake; k++) {
      const row = 2 * k * n;
      const add = (node: number, along: number, across: number) => {
        view[row + node]! += OVER_2_PI * (along * sight.tangentX - across * sight.tangentY);
        view[row + n + node]! += OVER_2_PI * (along * sight.tangentY + across * sight.tangentX);
      };
      for (let j = 0; j < count; j++) {
        sight.look(wakeX[k + 1]!, wakeY[k + 1]!, x[j]!, y[j]!, x[j + 1]!, y[j + 1]!);
        const along = sight.risingAlong();
        const across = sight.risingAcross();
        add(j, sight.subtended() - along, -sight.spread() - across);
        add(j + 1, along, across);
      }
      if (gap === 0) continue;
      sight.look(wakeX[k + 1]!, wakeY[k + 1]!, x[count]!, y[count]!, x[0]!, y[0]!);
      const { vortex, outflow } = flow.base;
      const along = 0.5 * (vortex * sight.subtended() + outflow * sight.spread());
      const across = 0.5 * (-vortex * sight.spread() + outflow * sight.subtended());
      add(0, along, across);
      add(count, -along, -across);
    }
    return view;
  }

  private wakeVelocity(view: Float64Array, strength: Float64Array, streamX: number, streamY: number) {
    const { surface: n, wake } = this;
    const velocity = new Float64Array(2 * wake);
    for (let r = 0; r < 2 * wake; r++) {
      let sum = r % 2 === 0 ? streamX : streamY;
      for (let j = 0; j < n; j++) sum += view[r * n + j]! * strength[j]!;
      velocity[r] = sum;
    }
    return velocity;
  }

  /** Rows of the wake: change of speed along it by the changed strengths, by the surface's outflow and by its own. */
  private fillWake(view: Float64Array): void {
    const { surface: n, wake, columns, change } = this;
    for (let k = 0; k < wake; k++) {
      const [tx, ty] = this.wakeTangent(k + 1);
      const row = change.subarray((n + k) * columns, (n + k + 1) * columns);
      for (let i = 0; i < n; i++) {
        const along = tx * view[2 * k * n + i]! + ty * view[(2 * k + 1) * n + i]!;
        const from = i * columns;
        for (let j = 0; j < columns; j++) row[j]! += along * change[from + j]!;
      }
      this.addSurfaceOutflow(row, k + 1, tx, ty);
      this.addWakeOutflow(row, k + 1);
    }
  }

  /** Direct pull of the surface panels' outflow on the speed at a wake node. */
  private addSurfaceOutflow(row: Float64Array, node: number, tx: number, ty: number): void {
    const { sight } = this;
    const { x, y, length, count } = this.flow.panels;
    for (let j = 0; j < count; j++) {
      sight.look(this.wakeX[node]!, this.wakeY[node]!, x[j]!, y[j]!, x[j + 1]!, y[j + 1]!);
      const along = tx * sight.tangentX + ty * sight.tangentY;
      const across = ty * sight.tangentX - tx * sight.tangentY;
      const pull = (OVER_2_PI * (along * sight.spread() + across * sight.subtended())) / length[j]!;
      row[j]! += pull;
      row[j + 1]! -= pull;
    }
  }

  /** Pull of the wake's own outflow, as the mean speed between the middles of the panels on either side of a node. */
  private addWakeOutflow(row: Float64Array, node: number): void {
    const { surface: n, wake, wakeX, wakeY, sight } = this;
    const next = Math.min(node + 1, wake);
    const ahead = 0.5 * (this.wakeArc[node]! - this.wakeArc[node - 1]!);
    const [tx, ty] = this.wakeTangent(node);
    const ax = 0.5 * (wakeX[node - 1]! + wakeX[node]!);
    const ay = 0.5 * (wakeY[node - 1]! + wakeY[node]!);
    const bx = node < wake ? 0.5 * (wakeX[node]! + wakeX[next]!) : wakeX[node]! + ahead * tx;
    const by = node < wake ? 0.5 * (wakeY[node]! + wakeY[next]!) : wakeY[node]! + ahead * ty;
    const distance = Math.hypot(bx - ax, by - ay);
    for (let k = 0; k < wake; k++) {
      sight.look(bx, by, wakeX[k]!, wakeY[k]!, wakeX[k + 1]!, wakeY[k + 1]!);
      const behind = sight.evenLog();
      sight.look(ax, ay, wakeX[k]!, wakeY[k]!, wakeX[k + 1]!, wakeY[k + 1]!);
      const pull = (OVER_2_PI * (behind - sight.evenLog())) / (distance * sight.size);
      row[n + k]! -= pull;
      row[n + k + 1]! += pull;
    }
  }

  /** Direction of the wake at a node: along the chord of the panels on its two sides. */
  private wakeTangent(node: number): [number, number] {
    const next = Math.min(node + 1, this.wake);
    const dx = this.wakeX[next]! - this.wakeX[node - 1]!;
    const dy = this.wakeY[next]! - this.wakeY[node - 1]!;
    const size = Math.hypot(dx, dy);
    return [dx / size, dy / size];
  }
}
