import type { Plugin } from 'vite';
export function helpPages(): Plugin;
export function helpNames(): string[];
export function helpPage(name: string): string;
export function helpStyle(): string;
