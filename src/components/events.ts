/** The events components send up; the page listens, nothing else does. */
import type { EditDetail } from '../session/edits.ts';
import type { Design } from '../solver/design/document.ts';

export type { Change, EditDetail } from '../session/edits.ts';

/** An edit of the design, from a field or a handle. Bubbles through shadow roots. */
export class DesignEditEvent extends CustomEvent<EditDetail> {
  static readonly type = 'design-edit';
  /** Set by the page when it refuses the edit: why, in a sentence. The sender may read it right after dispatching. */
  refusal: string | null = null;
  constructor(detail: EditDetail) {
    super(DesignEditEvent.type, { detail, bubbles: true, composed: true });
  }
}

/** Asks the page to put a design on the shelf. */
export class DesignKeepEvent extends CustomEvent<{ design: Design; name: string }> {
  static readonly type = 'design-keep';
  constructor(design: Design, name = design.name) {
    super(DesignKeepEvent.type, { detail: { design, name }, bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'design-keep': DesignKeepEvent;
    'design-edit': DesignEditEvent;
  }
}
