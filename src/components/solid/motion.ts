/** Motion that settles: exact for any step, never past its goal. No drawing, no clock. */

export interface Spring {
  value: number;
  speed: number; // per second
}

/**
 * A critically damped spring after `seconds`, from the closed form of x'' + 2 r x' + r^2 x = 0, x the way to the goal:
 *   x = (x0 + c t) e^(-r t), c = x0' + r x0.
 * It passes the goal only where c and x0 differ in sign; such haste is taken out first. Steps of any size, in any number, end at
 * the same place.
 */
export function follow({ value, speed }: Spring, goal: number, seconds: number, rate: number): Spring {
  const gap = value - goal;
  const asked = speed + rate * gap;
  const c = asked * gap > 0 ? asked : 0;
  const fall = Math.exp(-rate * seconds);
  const left = (gap + c * seconds) * fall;
  return { value: goal + left, speed: c * fall - rate * left };
}

/** Whether nothing is left to be seen of a motion. */
export function isSettled({ value, speed }: Spring, goal: number, least: number): boolean {
  return Math.abs(value - goal) < least && Math.abs(speed) < 10 * least;
}
