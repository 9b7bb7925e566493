import { LitElement } from 'lit';

/** Every element below writes its figures again, though nothing it was given has changed. */
export function redrawAll(root: Element | ShadowRoot): void {
  for (const element of root.querySelectorAll('*')) {
    if (element instanceof LitElement) element.requestUpdate();
    if (element.shadowRoot) redrawAll(element.shadowRoot);
  }
}
