// Runs a TypeScript file of the project from Node: bundled with the project's own builder, aside, and removed again.
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** The module's exports; `plugins` may change what it is made of. */
export async function importBundled(source, plugins = []) {
  process.env.NODE_ENV = 'production';
  const path = join(root, source);
  const aside = mkdtempSync(join(root, '.bundle-'));
  try {
    await build({
      root,
      configFile: false,
      publicDir: false,
      logLevel: 'error',
      plugins,
      ssr: { noExternal: true },
      define: { 'import.meta.url': JSON.stringify(pathToFileURL(path).href) },
      build: {
        ssr: path,
        outDir: aside,
        target: 'node20',
        minify: false,
        rollupOptions: { output: { entryFileNames: 'bundle.mjs' } },
      },
    });
    return await import(pathToFileURL(join(aside, 'bundle.mjs')));
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}
