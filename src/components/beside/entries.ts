/** What stands in the comparison: the open design and the kept ones, with their figures as far as they are known. */
import type { Marks } from '../../session/kept-record.ts';
import type { Session } from '../../session/session.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Report } from '../../solver/report.ts';

export const OPEN = 'open';

export interface Entry {
  id: string; // of the kept design, or OPEN
  name: string;
  design: Design;
  report: Report | null;
  failure: string | null;
  marks: Marks;
  isGhost: boolean;
}

/** The open design first, then the kept ones that can be read. */
export function entriesOf(session: Session): Entry[] {
  const { design, report, failure, kept, reports, ghosts } = session;
  const open: Entry = { id: OPEN, name: design.name, design, report, failure, marks: {}, isGhost: false };
  const others = kept.list.flatMap((each): Entry[] => {
    const { id, name, marks, reading } = each;
    if (!reading.ok) return [];
    const own = { report: reports.of(each), failure: reports.failureOf(each) };
    return [{ id, name, design: reading.design, ...own, marks, isGhost: ghosts.chosen === id }];
  });
  return [open, ...others];
}
