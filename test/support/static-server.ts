/** Serves a folder as any plain host would, and can be stopped and started again at the same address. */
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
};

export class StaticServer {
  #server: Server | null = null;
  #port = 0;

  constructor(readonly folder: string) {}

  get address(): string {
    return `http://127.0.0.1:${this.#port}/`;
  }

  async start(): Promise<void> {
    const server = createServer(async ({ url = '/' }, response) => {
      const path = decodeURIComponent(new URL(url, 'http://here').pathname);
      const file = join(this.folder, normalize(path.endsWith('/') ? `${path}index.html` : path));
      try {
        const content = await readFile(file);
        response.setHeader('Content-Type', TYPES[extname(file)] ?? 'application/octet-stream');
        response.end(content);
      } catch {
        response.statusCode = 404;
        response.end();
      }
    });
    await new Promise<void>((resolve) => server.listen(this.#port, '127.0.0.1', resolve));
    const place = server.address();
    if (typeof place === 'object' && place) this.#port = place.port;
    this.#server = server;
  }

  async stop(): Promise<void> {
    const server = this.#server;
    this.#server = null;
    server?.closeAllConnections();
    await new Promise<void>((resolve) => (server ? server.close(() => resolve()) : resolve()));
  }
}
