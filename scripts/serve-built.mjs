// Builds the page as it is delivered and serves it: for the end-to-end tests and the frame bench.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Builds in a child process, since a test runner's own NODE_ENV would make a development build. Answers with the folder. */
export function buildPage() {
  const outDir = mkdtempSync(join(tmpdir(), 'downcurve-'));
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const args = [vite, 'build', '--outDir', outDir, '--emptyOutDir', '--logLevel', 'error'];
  const { status, stderr, stdout } = spawnSync(process.execPath, args, {
    cwd: root,
    env: { ...process.env, NODE_ENV: 'production' },
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`the page does not build: ${stderr || stdout}`);
  return outDir;
}

export const dropPage = (outDir) => rmSync(outDir, { recursive: true, force: true });

/** Serves a built page. */
export async function servePage(outDir) {
  const server = await preview({
    root,
    logLevel: 'silent',
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1' },
  });
  const place = server.httpServer.address();
  return {
    address: `http://127.0.0.1:${place.port}/`,
    outDir,
    close: () => new Promise((resolve) => server.httpServer.close(resolve)),
  };
}

/** Builds the page and serves it until it is closed. */
export async function serveBuilt() {
  const outDir = buildPage();
  const served = await servePage(outDir);
  return {
    ...served,
    close: async () => {
      await served.close();
      dropPage(outDir);
    },
  };
}
