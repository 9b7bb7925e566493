/** The solver in a thread of its own: a message in, solve, a message out. Studies run in a second thread of the same kind. */
import type { SolveRequest } from '../src/session/messages.ts';
import { SolveServer } from '../src/session/solve-server.ts';
import type { StudyOrder } from '../src/session/study-messages.ts';
import { STUDIES } from '../src/session/study-registry.ts';
import { StudyServer } from '../src/session/study-server.ts';
import { solve } from '../src/solver/solve.ts';
import { prepareSections } from '../src/solver/studies/prepare-sections.ts';

const solver = new SolveServer({
  solve,
  prepare: (design) => prepareSections(design, [design.brief.speeds.cruise]),
  tell: (reply) => self.postMessage(reply),
});
const studies = new StudyServer(STUDIES, (news) => self.postMessage(news), { prepare: prepareSections });

self.addEventListener('message', ({ data }: MessageEvent<SolveRequest | StudyOrder>) => {
  if ('study' in data) studies.receive(data);
  else void solver.receive(data);
});
