import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { firstFiles, namedAhead } from './scripts/first-files.mjs';
import { helpPages } from './scripts/help-pages.mjs';
import { offline } from './scripts/offline.mjs';
import { contentPolicy } from './scripts/policy.mjs';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('./web'),
  base: './',
  plugins: [contentPolicy(), helpPages(), namedAhead(), offline()],
  worker: { format: 'es' },
  build: {
    outDir: here('./dist'),
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: ['index', 'beach', 'rider'].map((page) => here(`./web/${page}.html`)),
      output: { codeSplitting: { groups: firstFiles() } },
    },
  },
  server: { fs: { allow: [here('.')] } },
});
