/**
 * Makes workshop files away from the page: one at a time in a worker of its own, with progress; cancelling ends the
 * worker. Without a working worker the page makes them itself.
 */
import type { Design } from '../solver/design/document.ts';
import type { BuildFile, Order } from '../workshop/order.ts';

export type ExportNews =
  | { kind: 'progress'; share: number }
  | { kind: 'done'; file: BuildFile }
  | { kind: 'failed'; message: string };

export type MakeFile = (
  design: Design,
  order: Order,
  progress: (share: number) => void,
) => Promise<BuildFile>;

export interface ExporterParts {
  makeExportWorker: () => Worker; // may throw
  loadExport: () => Promise<MakeFile>; // for a page whose worker does not start
}

export class Exporter {
  #worker: Worker | null = null;

  constructor(private readonly parts: ExporterParts) {}

  /** Starts; what runs before is given up. Calling the answer cancels without further news. */
  start(design: Design, order: Order, tell: (news: ExportNews) => void): () => void {
    this.#worker?.terminate();
    let isWanted = true;
    const hear = (news: ExportNews) => {
      if (isWanted) tell(news);
    };
    const here = () => void this.#makeHere(design, order, hear);
    try {
      const worker = this.parts.makeExportWorker();
      this.#worker = worker;
      worker.addEventListener('message', ({ data }: MessageEvent<ExportNews>) => {
        if (data.kind !== 'progress') worker.terminate(); // its memory is not kept
        hear(data);
      });
      worker.addEventListener('error', here, { once: true });
      worker.postMessage({ design, order });
    } catch {
      here();
    }
    return () => {
      isWanted = false;
      this.#worker?.terminate();
      this.#worker = null;
    };
  }

  async #makeHere(design: Design, order: Order, hear: (news: ExportNews) => void): Promise<void> {
    try {
      const make = await this.parts.loadExport();
      hear({ kind: 'done', file: await make(design, order, (share) => hear({ kind: 'progress', share })) });
    } catch (error) {
      hear({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  }
}
