/**
 * The line along which a section's wake is followed: it leaves along the bisector of the trailing edge and turns into
 * the chord line within a quarter of a chord, at every angle. Its true path matters little, as it carries outflow only.
 */
import type { PanelFlow } from './pressure.ts';

const LENGTH = 1; // chords
const TURN = 0.25; // chords over which the slope falls by e

/** Nodes from the trailing edge (0) on, `count` panels that grow in equal ratio from the length of the section's last. */
export function drawWake({ panels, bisectorX, bisectorY }: PanelFlow, count: number) {
  const last = panels.count;
  const first = 0.5 * (panels.length[0]! + panels.length[last - 1]!);
  const ratio = growth(LENGTH / first, count);
  const start = Math.atan2(bisectorY, bisectorX);
  const x = new Float64Array(count + 1);
  const y = new Float64Array(count + 1);
  const arc = new Float64Array(count + 1);
  x[0] = 0.5 * (panels.x[0]! + panels.x[last]!);
  y[0] = 0.5 * (panels.y[0]! + panels.y[last]!);
  for (let k = 1, step = first; k <= count; k++, step *= ratio) {
    arc[k] = arc[k - 1]! + step;
    const slope = start * Math.exp(-(arc[k]! - 0.5 * step) / TURN);
    x[k] = x[k - 1]! + step * Math.cos(slope);
    y[k] = y[k - 1]! + step * Math.sin(slope);
  }
  return { x, y, arc };
}

/** Ratio r for which 1 + r + ... + r^(count - 1) = sum, by Newton's method; sum above count. */
function growth(sum: number, count: number): number {
  let r = (sum / count) ** (2 / (count - 1));
  for (let k = 0; k < 60; k++) {
    const power = r ** count;
    const value = (power - 1) / (r - 1) - sum;
    const slope = (count * power) / (r * (r - 1)) - (power - 1) / (r - 1) ** 2;
    const step = value / slope;
    r -= step;
    if (Math.abs(step) < 1e-12) break;
  }
  return r;
}
