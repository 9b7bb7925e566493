/** The solver in a thread of its own: a message in, solve, a message out. */
import { answer, type SolveRequest } from '../src/session/messages.ts';
import { solve } from '../src/solver/solve.ts';

self.addEventListener('message', ({ data }: MessageEvent<SolveRequest>) => {
  self.postMessage(answer(solve, data));
});
