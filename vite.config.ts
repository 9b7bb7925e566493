import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('./web'),
  base: './',
  worker: { format: 'es' },
  build: { outDir: here('./dist'), emptyOutDir: true, target: 'es2022' },
  server: { fs: { allow: [here('.')] } },
});
