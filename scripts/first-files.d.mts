import type { Plugin, Rolldown } from 'vite';

export function firstFiles(): Rolldown.CodeSplittingGroup[];
export function namedAhead(): Plugin;
