import type { Session } from './session.ts';
import { hasLink } from './share-link.ts';

/**
 * Opens the share link in the page's address, if there is one, and takes it off: a reload or a bookmark then finds the
 * design as it has become, not as it was sent. Other fragments stay.
 */
export function openAddress(session: Session): void {
  const { hash, pathname, search } = window.location;
  if (!hasLink(hash)) return;
  session.openLink(hash);
  window.history.replaceState(window.history.state, '', pathname + search);
}
