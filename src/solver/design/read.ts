/**
 * The gate of the solver: unknown text or data to a design, or one message with key path, finding and what is allowed.
 * Nothing is repaired in silence and nothing throws. It draws the surfaces to see that they fit the water, and so
 * stands after geometry in the order of imports though it lives beside the schema.
 */
import * as v from 'valibot';
import { outlineProblem } from '../geometry/contour.ts';
import { depthProblem, touchingProblem } from '../geometry/craft.ts';
import { GeometryError, type Surface, surfaceOf } from '../geometry/surface.ts';
import { laminateProblem, lawProblem } from './checks.ts';
import { type Design, DesignSchema, FORMAT, type Planform, VERSION } from './document.ts';
import { jsonProblem } from './json-text.ts';
import { migrate } from './migrate.ts';
import type { PlainDocument } from './migration-chain.ts';
import { type Plain, plainCopy } from './plain.ts';
import { describe, join, type Problem, sentence } from './problem.ts';
import { wantedProblem } from './wanted.ts';

export type Reading = { ok: true; design: Design } | { ok: false; message: string };

export const LARGEST_TEXT = 1_000_000; // characters
const LEAST_SPREAD = 0.02; // span over unrolled length below which port and starboard lie on one another

/** Reads the text of a design document. */
export function readDesign(text: string): Reading {
  if (text.length > LARGEST_TEXT)
    return refuse(`document: found ${text.length} characters, allowed up to ${LARGEST_TEXT}`);
  const json = text.replace(/^\uFEFF/, '');
  const fault = jsonProblem(json);
  if (fault) return refuse(`not a JSON document: ${fault}`);
  return readDesignValue(JSON.parse(json));
}

/** Reads a document already parsed. The design answered shares nothing with `value`. */
export function readDesignValue(value: unknown): Reading {
  const copied = plainCopy(value);
  if (!copied.ok) return refuse(sentence(copied.problem));
  const headed = checkHead(copied.value);
  if (!headed.ok) return headed;
  const present = bringUp(headed.document, headed.version);
  if (!present.ok) return present;
  const parsed = v.safeParse(DesignSchema, present.document, { abortEarly: true });
  if (!parsed.success) return refuse(sentence(schemaProblem(parsed.issues[0])));
  const problem = designProblem(parsed.output);
  return problem === null ? { ok: true, design: parsed.output } : refuse(problem);
}

/** The text of a design as it is saved: keys in the order of the schema, pairs on one line, unknown keys kept. */
export function writeDesign(design: Design): string {
  const text = JSON.stringify(design, null, 2);
  return `${text.replace(/\[\n\s+(-?[\d.eE+-]+),\n\s+(-?[\d.eE+-]+)\n\s+\]/g, '[$1, $2]')}\n`;
}

function refuse(message: string): { ok: false; message: string } {
  return { ok: false, message };
}

type Head = { ok: true; document: PlainDocument; version: number } | { ok: false; message: string };

function checkHead(value: Plain): Head {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return refuse(`document: found ${describe(value)}, allowed an object with format "${FORMAT}"`);
  if (value.format !== FORMAT) return refuse(`format: found ${describe(value.format)}, allowed "${FORMAT}"`);
  const { version } = value;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return refuse(`version: found ${describe(version)}, allowed a whole number up to ${VERSION}`);
  if (version > VERSION)
    return refuse(
      `version: found ${version}, allowed up to ${VERSION}; a newer Downcurve made this document`,
    );
  return { ok: true, document: value, version };
}

function bringUp(document: PlainDocument, version: number): Head {
  try {
    return { ok: true, document: migrate(document, version), version: VERSION };
  } catch {
    return refuse(
      `version: found ${version} with keys of another shape, allowed a document that can be brought up to version ${VERSION}`,
    );
  }
}

function schemaProblem(issue: v.BaseIssue<unknown>): Problem {
  const path = (issue.path ?? []).reduce((joined, { key }) => join(joined, key as string | number), '');
  // A check on a whole object names what it found itself; everything else shows the value.
  const found = issue.type === 'raw_transform' ? (issue.expected ?? '') : describe(issue.input);
  return { path, found, allowed: issue.message };
}

/** What is wrong with a document of the right shape, as a sentence; null when nothing is. */
function designProblem(design: Design): string | null {
  const { wing, stabilizer } = design;
  const problem = planformProblem(wing, 'wing') ?? (stabilizer && planformProblem(stabilizer, 'stabilizer'));
  if (problem) return sentence(problem);
  const drawnWing = draw(wing, 'wing');
  if (typeof drawnWing === 'string') return drawnWing;
  const drawnStabilizer = stabilizer && draw(stabilizer, 'stabilizer', stabilizer);
  if (typeof drawnStabilizer === 'string') return drawnStabilizer;
  const refused = laminateProblem(design) ?? wantedProblem(design.wanted);
  if (refused) return sentence(refused);
  const touching = touchingProblem(drawnWing, drawnStabilizer);
  return touching ?? depthsProblem(design, drawnWing, drawnStabilizer);
}

function planformProblem(planform: Planform, path: string): Problem | null {
  const law = lawProblem(planform, path);
  if (law) return law;
  for (const end of ['root', 'tip'] as const) {
    const outline = planform.section[end];
    const problem = outline.kind === 'coordinates' ? outlineProblem(outline.points) : null;
    if (problem) return { path: `${path}.section.${end}.points`, ...problem };
  }
  return null;
}

function draw(planform: Planform, path: string, place?: { arm: number; height: number }): Surface | string {
  try {
    const surface = surfaceOf(planform, place);
    if (surface.span >= LEAST_SPREAD * surface.unrolledLength) return surface;
    const found = `a span of ${surface.span.toFixed(3)} m`;
    return `${path}.droop: found ${found}, allowed ${100 * LEAST_SPREAD} % of the unrolled length or more`;
  } catch (error) {
    if (error instanceof GeometryError) return `${path}.${error.message}`;
    throw error;
  }
}

/** Every depth of the brief: no deeper than the strut is long, and every station below the surface. */
function depthsProblem({ brief, strut }: Design, wing: Surface, stabilizer: Surface | null): string | null {
  const depths: Array<[string, number | null | undefined]> = [
    ['brief.depth', brief.depth],
    ['brief.depths.takeOff', brief.depths?.takeOff],
    ['brief.depths.cruise', brief.depths?.cruise],
    ['brief.depths.top', brief.depths?.top],
  ];
  for (const [path, depth] of depths) {
    if (depth === null || depth === undefined) continue;
    if (strut && depth > strut.length)
      return `${path}: found ${depth} m, allowed up to the strut's length, ${strut.length} m`;
    const problem = depthProblem(wing, stabilizer, null, depth);
    if (problem) return problem;
  }
  return null;
}
