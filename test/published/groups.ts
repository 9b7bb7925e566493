/** Every published check of the program, by subject. */
import { bending } from './bending.ts';
import { cavitation } from './cavitation.ts';
import { derivatives } from './derivatives.ts';
import { friction } from './friction.ts';
import { laminarFlows } from './laminar.ts';
import { making } from './making.ts';
import { motion } from './motion.ts';
import { nonplanar } from './nonplanar.ts';
import { planar } from './planar.ts';
import type { PublishedRow } from './row.ts';
import { running } from './running.ts';
import { searching } from './searching.ts';
import { sectionDrag } from './section-drag.ts';
import { sectionPressure } from './section-pressure.ts';
import { structures } from './structures.ts';
import { surface } from './surface.ts';
import { swept } from './swept.ts';
import { tank } from './tank.ts';
import { transition } from './transition.ts';
import { water } from './water.ts';

export interface PublishedGroup {
  title: string;
  rows: readonly PublishedRow[];
}

export const GROUPS: readonly PublishedGroup[] = [
  { title: 'Planar wings: lift and induced drag', rows: planar },
  { title: 'Swept wings', rows: swept },
  { title: 'Nonplanar wings', rows: nonplanar },
  { title: 'Under a free surface', rows: surface },
  { title: 'Hydrofoils in the towing tank, waves', rows: tank },
  { title: 'Cavitation', rows: cavitation },
  { title: 'Water', rows: water },
  { title: 'Skin friction', rows: friction },
  { title: 'Sections', rows: [...sectionPressure, ...sectionDrag, ...laminarFlows] },
  { title: 'Transition, roughness, finish', rows: transition },
  { title: 'Stability derivatives', rows: derivatives },
  { title: 'Structures', rows: structures },
  { title: 'Motion, unsteady flow, waves', rows: motion },
  { title: 'Foils that give', rows: bending },
  { title: 'Level running and droop', rows: running },
  { title: 'Documents, bodies, skin', rows: making },
  { title: 'Searches and fits', rows: searching },
];
