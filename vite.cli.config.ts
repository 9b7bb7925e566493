import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

// Dependencies are bundled: loading mathjs file by file costs a second at each start.
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: here('./src/batch/main.ts'),
    outDir: here('./dist-cli'),
    target: 'node20',
    minify: false,
    rollupOptions: { output: { entryFileNames: 'batch.mjs' } },
  },
});
