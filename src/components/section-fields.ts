/** The sections of a wing or stabilizer: a four-digit code, said in words as well. */
import { html, type TemplateResult } from 'lit';
import { writePlain } from '../session/number-format.ts';
import { round } from '../session/rounding.ts';
import type { Outline, Planform } from '../solver/design/document.ts';
import { camberRatio, thicknessRatio } from '../solver/geometry/outline.ts';
import type { Change } from './events.ts';
import './text-field.ts';

/** "11 % thick, 2 % camber at 40 % of the chord"; digits as NACA Report 460 defines them. */
export function describeOutline(outline: Outline): string {
  const percent = (share: number) => `${writePlain(round(100 * share, 1))} %`;
  const camber = camberRatio(outline);
  const thick = `${percent(thicknessRatio(outline))} thick`;
  const shape = Math.abs(camber) < 5e-4 ? `${thick}, symmetric` : `${thick}, ${percent(camber)} camber`;
  if (outline.kind === 'coordinates') return `imported, ${outline.points.length} points: ${shape}`;
  const { thicknessScale = 1, camberScale = 1 } = outline;
  const place = Math.abs(camber) < 5e-4 ? '' : ` at ${Number(outline.code[1]) * 10} % of the chord`;
  return `${shape}${place}${thicknessScale === 1 && camberScale === 1 ? '' : ', scaled'}`;
}

export function sectionFields(planform: Planform, path: string): TemplateResult {
  return html`${sectionField(planform, path, 'root', 'Section at the root')}
  ${sectionField(planform, path, 'tip', 'Section at the tip')}`;
}

export function sectionField(
  planform: Planform,
  path: string,
  end: 'root' | 'tip',
  label = 'Section',
): TemplateResult {
  const outline = planform.section[end];
  return html`<text-field
    .label=${label}
    edit-label="${path} ${end} section"
    .value=${outline.kind === 'naca4' ? outline.code : outline.name}
    .hint=${describeOutline(outline)}
    .maxLength=${12}
    .toChanges=${(text: string) => toOutline(text, `${path}.section.${end}`)}
  ></text-field>`;
}

/** "2411", "naca 2411" and "NACA2411" alike. */
function toOutline(text: string, path: string): Change[] | string {
  const code = /^(?:naca)?[\s-]*(\d{4})$/i.exec(text)?.[1];
  if (!code) return `“${text}” is no four-digit section; write for example 2411 or 0010.`;
  return [{ path, value: { kind: 'naca4', code } }];
}
