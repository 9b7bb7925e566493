/** A session that solves on this thread, coarsely, and keeps what it keeps in memory. */
import type { KeptStore } from '../../src/session/kept.ts';
import { Session } from '../../src/session/session.ts';
import type { AnyStudies } from '../../src/session/study-server.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { readDesign, readDesignValue, writeDesign } from '../../src/solver/design/read.ts';
import { solve } from '../../src/solver/solve.ts';
import { riddenStudy } from '../../src/solver/studies/ridden.ts';
import { memoryKept } from './kept.ts';
import { sampleDesign } from './sample-report.ts';

const quick = (design: Design) => solve(design, { neutralDroop: false, strips: 10 });
const none = () => {
  throw new Error('none here');
};

export interface SessionSetting {
  design?: Design;
  kept?: KeptStore;
  notebook?: Storage | null;
  studies?: AnyStudies;
  /** Without figures: they never come. */
  isIdle?: boolean;
}

export function openSession(setting: SessionSetting = {}): Promise<Session> {
  return Session.open({
    demo: setting.design ?? sampleDesign(),
    read: readDesign,
    readValue: readDesignValue,
    write: writeDesign,
    shelf: {
      keys: async () => [],
      read: async () => undefined,
      write: async () => {},
      remove: async () => {},
    },
    notebook: setting.notebook ?? null,
    kept: setting.kept ?? memoryKept(),
    channel: null,
    makeWorker: none,
    loadSolve: setting.isIdle ? () => new Promise(() => {}) : async () => quick,
    loadStudies: async () => setting.studies ?? { report: quick, ridden: riddenStudy },
    makeExportWorker: none,
    loadExport: async () => none,
  });
}
