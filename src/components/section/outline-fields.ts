/** Code, thickness and camber of the sections at root and tip. Thickness and camber scale what code or points draw. */
import { html, type TemplateResult } from 'lit';
import { writeFixed, writePlain } from '../../session/number-format.ts';
import { round } from '../../session/rounding.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Planform } from '../../solver/design/document.ts';
import { RANGES } from '../../solver/design/ranges.ts';
import { camberRatio, thicknessRatio } from '../../solver/geometry/outline.ts';
import type { Change } from '../events.ts';
import '../number-field.ts';
import { sectionField } from '../section-fields.ts';

type End = 'root' | 'tip';
type Scale = 'thicknessScale' | 'camberScale';

export function outlineFields(
  planform: Planform,
  part: 'wing' | 'stabilizer',
  units: UnitSystem,
): TemplateResult {
  return html`${(['root', 'tip'] as const).map(
    (end) => html`<div>
      <h3>At the ${end}</h3>
      ${sectionField(planform, part, end)} ${scaleField(planform, part, end, 'thicknessScale', units)}
      ${scaleField(planform, part, end, 'camberScale', units)}
    </div>`,
  )}`;
}

function scaleField(
  planform: Planform,
  part: 'wing' | 'stabilizer',
  end: End,
  scale: Scale,
  units: UnitSystem,
): TemplateResult {
  const outline = planform.section[end];
  const isThickness = scale === 'thicknessScale';
  const measure = isThickness ? thicknessRatio : camberRatio;
  const drawn = measure({ ...outline, [scale]: 1 });
  const factor = outline[scale] ?? 1;
  const name = isThickness ? 'Thickness' : 'Camber';
  const isFlat = !isThickness && Math.abs(drawn) < 1e-6;
  return html`<number-field
    .label=${name}
    edit-label="${part} ${end} ${name.toLowerCase()}"
    quantity="share"
    .units=${units}
    .value=${measure(outline)}
    .step=${isThickness ? 0.002 : 0.001}
    derived
    .hint=${isFlat ? 'symmetric: no camber to scale' : factor === 1 ? '' : `${describeFactor(factor)} of the ${percent(drawn)} drawn`}
    .toChanges=${(wanted: number) => scaleChanges(`${part}.section.${end}.${scale}`, drawn, wanted, scale)}
  ></number-field>`;
}

/** The scale that gives the wanted measure, or why none does; a scale of one leaves the document. */
export function scaleChanges(path: string, drawn: number, wanted: number, scale: Scale): Change[] | string {
  if (Math.abs(drawn) < 1e-6)
    return 'This section is symmetric: it has no camber to scale. Choose one that has.';
  const factor = Number((wanted / drawn).toFixed(5));
  const { min, max } = RANGES[`*.section.*.${scale}`];
  if (factor < min || factor > max) {
    const [low, high] = [min * drawn, max * drawn].sort((a, b) => a - b);
    return `${percent(wanted)} is out of range: ${percent(low!)} to ${percent(high!)} from this section.`;
  }
  return [{ path, value: factor === 1 ? undefined : factor }];
}

const percent = (share: number) => `${writePlain(round(100 * share, 2))} %`;
const describeFactor = (factor: number) => writeFixed(factor, 2);
