/**
 * Where a trip takes hold. A layer in strongly accelerated water stays laminar, or becomes so again, while
 * K = nu/u^2 du/ds exceeds about 3e-6 (B. E. Launder and W. P. Jones, Imperial College Report TM/TN/A/9, 1969; R.
 * Narasimha and K. R. Sreenivasan, Adv. Appl. Mech. 19 (1979) 221, from memory): a trip ahead of that acts behind it.
 */
import type { Panels } from './panels.ts';

const STILL_LAMINAR = 3e-6;

/**
 * Arc, along the panels, at which a trip at x/c on one side acts; NaN for none (x of 1 and beyond). `speed` is the
 * inviscid one at the nodes, clockwise.
 */
export function armTrip(
  panels: Panels,
  speed: Float64Array,
  reynolds: number,
  side: 'upper' | 'lower',
  x: number,
): number {
  if (!(x < 1)) return Number.NaN;
  const { arc, count } = panels;
  const direction = side === 'upper' ? -1 : 1;
  const end = side === 'upper' ? 0 : count;
  for (let i = count / 2; i !== end; i += direction) {
    const next = i + direction;
    const far = -direction * speed[next]!;
    const near = -direction * speed[i]!;
    if (panels.x[next]! < x || near <= 0) continue;
    const mean = 0.5 * (near + far);
    const growth = (far - near) / Math.abs(arc[next]! - arc[i]!);
    if (growth > STILL_LAMINAR * reynolds * mean * mean) continue;
    const share = (x - panels.x[i]!) / (panels.x[next]! - panels.x[i]!);
    return arc[i]! + Math.max(0, share) * (arc[next]! - arc[i]!);
  }
  return Number.NaN;
}
