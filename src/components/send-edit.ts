import { DesignEditEvent, type EditDetail } from './events.ts';

/** Sends an edit up to the page; answers null when it counts, else why it was refused. */
export function sendEdit(source: EventTarget, detail: EditDetail): string | null {
  const event = new DesignEditEvent(detail);
  source.dispatchEvent(event);
  return event.refusal;
}
