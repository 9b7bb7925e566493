/** What a first visitor reads: it stands on the page before the rest has come, and the page takes it over. */
import { recall, remember } from './preferences.ts';

export const HINT: readonly string[] = [
  'This is a finished wing, seen head-on as it comes towards you. Drag a tip up or down, or set any number.',
  'What its curve costs in lift and buys in hold is counted as you move.',
  'Everything is kept in this browser, and every step can be undone.',
];
export const HINT_ANSWER = 'Understood';

/** Puts the hint of a first visit into the page's head that `index.html` holds ready, unless it has been answered. */
export function showFirstWords(ahead: Element): void {
  if (!recall('hint', true)) return;
  const hint = document.createElement('div');
  hint.className = 'notice hint';
  const words = hint.appendChild(document.createElement('p'));
  for (const [k, line] of HINT.entries())
    words.append(...(k > 0 ? [document.createElement('br')] : []), line);
  const button = hint.appendChild(document.createElement('button'));
  button.type = 'button';
  button.textContent = HINT_ANSWER;
  button.addEventListener('click', () => {
    remember('hint', false);
    hint.remove();
  });
  ahead.append(hint);
}

/** Says in place of the hint that the rest of the page has not come. */
export function sayNotLoaded(ahead: Element): void {
  ahead.querySelector('.hint')?.remove();
  const trouble = document.createElement('p');
  trouble.className = 'notice trouble';
  trouble.role = 'alert';
  trouble.textContent = 'The page could not be loaded whole. Check the connection and load it again.';
  ahead.append(trouble);
}
