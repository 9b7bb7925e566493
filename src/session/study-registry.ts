/**
 * Every study by name: what the page asks the solver's study worker for. A study is a generator that yields the share
 * done between cases, or a plain function when it takes milliseconds. To add one, add a line. Only the worker loads
 * this file; the page takes its types.
 */
import type { Design } from '../solver/design/document.ts';
import { type DroopStudyOptions, droopStudy } from '../solver/studies/droop-study.ts';
import {
  type SpeedDetailOptions,
  type SpeedStudyOptions,
  speedDetails,
  speedStudy,
} from '../solver/studies/speed-study.ts';

export const STUDIES = {
  droop: (design: Design, options: DroopStudyOptions) => droopStudy(design, options),
  speed: (design: Design, options: SpeedStudyOptions) => speedStudy(design, options),
  speedDetails: (design: Design, options: SpeedDetailOptions) => speedDetails(design, options),
};

export type StudyRegistry = typeof STUDIES;
