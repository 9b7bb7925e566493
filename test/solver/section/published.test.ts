/** Published values of groups 6 to 8. */
import { describe } from 'vitest';
import { friction } from '../../published/friction.ts';
import { laminarFlows } from '../../published/laminar.ts';
import { sectionDrag } from '../../published/section-drag.ts';
import { transition } from '../../published/transition.ts';
import { runRows } from '../published/run-rows.ts';

describe('published: friction of plates', () => runRows(friction));
describe('published: transition, roughness, finish', () => runRows(transition));
describe('published: the laminar layer', () => runRows(laminarFlows));
describe('published: drag, lift and pressure of sections', () => runRows(sectionDrag));
