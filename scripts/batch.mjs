// Starts the batch command, bundling it first when the bundle is missing or older than the source.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const bundle = join(root, 'dist-cli', 'batch.mjs');

function newest(dir) {
  let time = 0;
  for (const entry of readdirSync(dir, { withFileTypes: true })) {
    const path = join(dir, entry.name);
    time = Math.max(time, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return time;
}

if (!existsSync(bundle) || statSync(bundle).mtimeMs < newest(join(root, 'src'))) {
  // Built aside and renamed, so that several commands may start at once.
  const aside = mkdtempSync(join(root, '.batch-'));
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const args = ['build', '-c', 'vite.cli.config.ts', '--outDir', aside, '--logLevel', 'error'];
  const { status, stderr, stdout } = spawnSync(process.execPath, [vite, ...args], {
    cwd: root,
    env: { ...process.env, NODE_ENV: 'production' },
    encoding: 'utf8',
  });
  if (status !== 0) {
    rmSync(aside, { recursive: true, force: true });
    console.error(stderr || stdout);
    process.exit(1);
  }
  rmSync(join(root, 'dist-cli'), { recursive: true, force: true });
  try {
    renameSync(aside, join(root, 'dist-cli'));
  } catch {
    rmSync(aside, { recursive: true, force: true }); // another start was quicker with the same bundle
  }
}
await import(pathToFileURL(bundle));
