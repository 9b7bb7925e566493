/**
 * Drives the stage: takes gestures, moves the eye, and draws a frame when something has changed, while it is in sight. Between
 * two changes nothing runs.
 */
import type { Frame } from './camera.ts';
import {
  fitted,
  Motion,
  NAMED_VIEWS,
  type NamedView,
  nearer,
  orbited,
  type Pose,
  shifted,
} from './camera.ts';
import type { Gestures } from './gestures.ts';
import type { Stage } from './stage.ts';

const LONGEST_STEP = 0.1; // s: after a pause the motion goes on from where it was
const FIRST_STEP = 1 / 60;

export class Eye implements Gestures {
  /** Frames drawn so far. */
  frames = 0;
  #motion: Motion | null = null;
  #frame = 0;
  #before: number | null = null;
  #isDue = false;
  #isSeen = true;
  #size = { width: 0, height: 0 };

  constructor(
    private readonly stage: Stage,
    private frame: Frame,
    private readonly hasSettled: () => void,
  ) {}

  /** Where the eye is bound for. */
  get goal(): Pose {
    return this.#motion?.goal ?? fitted(this.frame, NAMED_VIEWS[0]!, 1.6);
  }

  get size(): Readonly<{ width: number; height: number }> {
    return this.#size;
  }

  /** Something drawn is another: a frame will follow. */
  readonly request = (): void => {
    this.#isDue = true;
    if (this.#frame === 0 && this.#isSeen) this.#frame = requestAnimationFrame(this.#onFrame);
  };

  resize(width: number, height: number): void {
    if (width < 1 || height < 1) return;
    const before = this.#size;
    this.#size = { width, height };
    if (this.#motion) this.#refit(this.frame, before.width / before.height, this.frame);
    else this.#motion = new Motion(fitted(this.frame, NAMED_VIEWS[0]!, width / height));
    this.request();
  }

  /** Another frame to hold; the eye keeps its direction and how near it was. */
  hold(frame: Frame): void {
    const known = this.frame;
    this.frame = frame;
    if (this.#motion && JSON.stringify(known) !== JSON.stringify(frame))
      this.#refit(known, this.#size.width / this.#size.height, frame);
  }

  see(isSeen: boolean): void {
    this.#isSeen = isSeen;
    if (isSeen && this.#isDue) this.request();
  }

  turn(yaw: number, pitch: number, isDirect: boolean): void {
    this.#lead(orbited(this.goal, yaw, pitch), isDirect);
  }

  approach(factor: number, isDirect: boolean): void {
    this.#lead(nearer(this.goal, factor), isDirect);
  }

  shift(right: number, up: number, isDirect: boolean): void {
    this.#lead(shifted(this.goal, right, up), isDirect);
  }

  look(view: NamedView): void {
    this.#goTo(fitted(this.frame, view, this.#aspect));
  }

  /** All of the foil from where the eye looks now. */
  showAll(): void {
    this.#goTo(fitted(this.frame, this.goal, this.#aspect));
  }

  /** Draws the view at a size of its own, for a picture; the screen is drawn again at the next frame. */
  drawAt(width: number, height: number): HTMLCanvasElement {
    this.stage.draw(this.goal, width, height, 1);
    this.request();
    return this.stage.canvas;
  }

  stop(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    this.#isSeen = false;
  }

  get #aspect(): number {
    return this.#size.width / this.#size.height || 1.6;
  }

  #lead(pose: Pose, isDirect: boolean): void {
    if (!this.#motion) return;
    if (isDirect || isCalm()) this.#motion.jump(pose);
    else this.#motion.lead(pose);
    this.#changed();
  }

  #goTo(pose: Pose): void {
    if (!this.#motion) return;
    this.#motion.goTo(pose);
    if (isCalm()) this.#motion.jump(this.#motion.goal);
    this.#changed();
  }

  #refit(from: Frame, aspect: number, to: Frame): void {
    const { goal } = this;
    const [before, after] = [fitted(from, goal, aspect), fitted(to, goal, this.#aspect)];
    const moved = (axis: 'x' | 'y' | 'z' | 'range') => goal[axis] + after[axis] - before[axis];
    this.#motion!.jump({ ...goal, x: moved('x'), y: moved('y'), z: moved('z'), range: moved('range') });
  }

  #changed(): void {
    this.request();
    this.hasSettled();
  }

  readonly #onFrame = (now: number): void => {
    this.#frame = 0;
    if (!this.#motion || this.#size.width < 1) return;
    const step = this.#before === null ? FIRST_STEP : Math.min(LONGEST_STEP, (now - this.#before) / 1000);
    const isMoving = this.#motion.advance(step);
    this.#isDue = false;
    this.stage.draw(this.#motion.pose, this.#size.width, this.#size.height);
    this.frames++;
    this.#before = isMoving ? now : null;
    if (isMoving) this.request();
  };
}

const isCalm = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;
