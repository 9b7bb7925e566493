import type { Plugin } from 'vite';
export const PAGE_POLICY: string;
export const HELP_POLICY: string;
export function contentPolicy(): Plugin;
