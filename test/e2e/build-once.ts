/** The page is built once for all end-to-end tests. */
import type { TestProject } from 'vitest/node';
import { buildPage, dropPage } from '../../scripts/serve-built.mjs';

export default function setup(project: TestProject): () => void {
  const outDir = buildPage();
  project.provide('builtPage', outDir);
  return () => dropPage(outDir);
}

declare module 'vitest' {
  export interface ProvidedContext {
    builtPage: string; // its folder
  }
}
