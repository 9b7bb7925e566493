/** The beginning of the page, kept small: first words, then the design and what shows it, each in its own file. */
import { sayNotLoaded, showFirstWords } from '../src/components/first-words.ts';

const shell = document.querySelector('app-shell')!;
const ahead = shell.querySelector('.ahead main')!;
showFirstWords(ahead);
try {
  const opening = import('./open-session.ts').then(({ openSession }) => openSession());
  const [{ demos, session }] = await Promise.all([opening, import('../src/components/app-shell.ts')]);
  shell.demos = demos;
  shell.session = session;
} catch (error) {
  sayNotLoaded(ahead);
  throw error;
}
