/** Drawings that wait for a frame with time left: many small plots made at once must not hold the page. */

const BUDGET = 8; // ms a frame

const waiting = new Map<object, () => void>();
let isAwake = false;

/** Draws in one of the next frames; a later request of the same owner takes the place of an earlier one. */
export function drawSoon(owner: object, draw: () => void): void {
  waiting.set(owner, draw);
  if (isAwake) return;
  isAwake = true;
  requestAnimationFrame(work);
}

export function forgetDrawing(owner: object): void {
  waiting.delete(owner);
}

function work(): void {
  const start = performance.now();
  for (const [owner, draw] of waiting) {
    waiting.delete(owner);
    draw();
    if (performance.now() - start > BUDGET) break;
  }
  isAwake = waiting.size > 0;
  if (isAwake) requestAnimationFrame(work);
}
