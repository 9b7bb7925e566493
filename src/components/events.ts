/** The events components send up; the page listens, nothing else does. */

export interface Change {
  path: string; // dotted key path in the design document: "wing.droop.tipAngle", "wing.chord" ...
  value: unknown;
}

export interface EditDetail {
  changes: Change[];
  label: string; // names the step for undo: "tip drop", "wing span"
  phase: 'live' | 'settled' | 'cancelled'; // moving, let go, or Escape: back to where the gesture began
}

/** An edit of the design, from a field or a handle. Bubbles through shadow roots. */
export class DesignEditEvent extends CustomEvent<EditDetail> {
  static readonly type = 'design-edit';
  /** Set by the page when it refuses the edit: why, in a sentence. The sender may read it right after dispatching. */
  refusal: string | null = null;
  constructor(detail: EditDetail) {
    super(DesignEditEvent.type, { detail, bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'design-edit': DesignEditEvent;
  }
}
