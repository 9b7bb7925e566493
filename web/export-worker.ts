/** Makes one workshop file in a thread of its own: an order in, progress and the file out. */
import type { ExportNews } from '../src/session/exporter.ts';
import type { Design } from '../src/solver/design/document.ts';
import { exportFile } from '../src/workshop/export.ts';
import type { Order } from '../src/workshop/order.ts';

const EVERY = 50; // ms between two words of progress

self.addEventListener('message', ({ data }: MessageEvent<{ design: Design; order: Order }>) => {
  let told = 0;
  const tell = (news: ExportNews, transfer: Transferable[] = []) => self.postMessage(news, { transfer });
  exportFile(data.design, data.order, (share) => {
    if (performance.now() - told < EVERY) return;
    told = performance.now();
    tell({ kind: 'progress', share });
  }).then(
    (file) => tell({ kind: 'done', file }, [file.bytes.buffer as ArrayBuffer]),
    (error) => tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) }),
  );
});
