/** The solver in a thread of its own: a message in, solve, a message out. Studies run in a second thread of the same kind. */
import { answer, type SolveRequest } from '../src/session/messages.ts';
import type { StudyOrder } from '../src/session/study-messages.ts';
import { STUDIES } from '../src/session/study-registry.ts';
import { StudyServer } from '../src/session/study-server.ts';
import { solve } from '../src/solver/solve.ts';

const studies = new StudyServer(STUDIES, (news) => self.postMessage(news));

self.addEventListener('message', ({ data }: MessageEvent<SolveRequest | StudyOrder>) => {
  if ('study' in data) studies.receive(data);
  else self.postMessage(answer(solve, data));
});
