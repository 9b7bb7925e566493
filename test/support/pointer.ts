/** A pointer for tests: press on an element, move by pixels, let go. */
export class Pointer {
  #x: number;
  #y: number;

  constructor(private readonly target: Element) {
    const box = target.getBoundingClientRect();
    this.#x = box.x + box.width / 2;
    this.#y = box.y + box.height / 2;
    target.setPointerCapture = () => {}; // the browser knows of no such pointer
  }

  press(): this {
    return this.#send('pointerdown', 0, 0);
  }

  move(dx: number, dy: number): this {
    return this.#send('pointermove', dx, dy);
  }

  /** What the browser tells of a move before the frame that its `pointermove` waits for. */
  moveRaw(dx: number, dy: number): this {
    return this.#send('pointerrawupdate', dx, dy);
  }

  release(): this {
    return this.#send('pointerup', 0, 0);
  }

  cancel(): this {
    return this.#send('pointercancel', 0, 0);
  }

  #send(type: string, dx: number, dy: number): this {
    this.#x += dx;
    this.#y += dy;
    this.target.dispatchEvent(
      new PointerEvent(type, {
        bubbles: true,
        composed: true,
        cancelable: true,
        pointerId: 7,
        button: 0,
        clientX: this.#x,
        clientY: this.#y,
      }),
    );
    return this;
  }
}
