/** What the page and the study worker say to each other; names, options and results follow from the registry. */
import type { Design } from '../solver/design/document.ts';
import type { StudyRegistry } from './study-registry.ts';

export type StudyName = keyof StudyRegistry;
export type StudyOptions<N extends StudyName> = Parameters<StudyRegistry[N]>[1];
type Returned<N extends StudyName> = ReturnType<StudyRegistry[N]>;
export type StudyResult<N extends StudyName> =
  Returned<N> extends Generator<number, infer Result, void> ? Result : Returned<N>;

/** Numbered by the page; one that stands behind waits while any other is at work. */
export type StudyOrder =
  | { study: 'start'; id: number; name: StudyName; design: Design; options: unknown; isBehind?: boolean }
  | { study: 'cancel'; id: number };

export type StudyNews =
  | { study: 'progress'; id: number; share: number }
  | { study: 'done'; id: number; result: unknown }
  | { study: 'failed'; id: number; message: string }
  | { study: 'cancelled'; id: number };
