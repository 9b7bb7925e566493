/** The sections of a wing or stabilizer: a four-digit code, said in words as well. */
import { html, type TemplateResult } from 'lit';
import type { Outline, Planform } from '../solver/design/document.ts';
import type { Change } from './events.ts';
import './text-field.ts';

/** "11 % thick, 2 % camber at 40 % of the chord"; digits as NACA Report 460 defines them. */
export function describeOutline(outline: Outline): string {
  if (outline.kind === 'coordinates') return `${outline.name}, imported: ${outline.points.length} points`;
  const [camber, place] = [Number(outline.code[0]), Number(outline.code[1])];
  const thick = `${Number(outline.code.slice(2))} % thick`;
  return camber === 0
    ? `${thick}, symmetric`
    : `${thick}, ${camber} % camber at ${place * 10} % of the chord`;
}

export function sectionFields(planform: Planform, path: string): TemplateResult {
  const field = (end: 'root' | 'tip', label: string) => {
    const outline = planform.section[end];
    return html`<text-field
      .label=${label}
      edit-label="${path} ${end} section"
      .value=${outline.kind === 'naca4' ? outline.code : outline.name}
      .hint=${describeOutline(outline)}
      .maxLength=${12}
      .toChanges=${(text: string) => toOutline(text, `${path}.section.${end}`)}
    ></text-field>`;
  };
  return html`${field('root', 'Section at the root')} ${field('tip', 'Section at the tip')}`;
}

/** "2411", "naca 2411" and "NACA2411" alike. */
function toOutline(text: string, path: string): Change[] | string {
  const code = /^(?:naca)?[\s-]*(\d{4})$/i.exec(text)?.[1];
  if (!code) return `“${text}” is no four-digit section; write for example 2411 or 0010.`;
  return [{ path, value: { kind: 'naca4', code } }];
}
