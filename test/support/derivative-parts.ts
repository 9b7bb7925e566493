/** What wing, stabilizer and strut each add to the lateral derivatives: a sum may be far smaller than its parts. */
import type { Design } from '../../src/solver/design/document.ts';
import { mixAlpha } from '../../src/solver/forces/loads.ts';
import type { Derivatives } from '../../src/solver/report.ts';
import { craftFor } from '../../src/solver/studies/craft-for.ts';
import { derivativesAbout, lateralLoads } from '../../src/solver/studies/derivatives.ts';
import { FlowPool } from '../../src/solver/vortex/flow.ts';

export type DerivativeName = keyof Derivatives;

/** A derivative and the largest of its parts, without sign. */
export interface Summed {
  value: number;
  largest: number;
}

export type Lateral = Record<'foil' | 'craft', Record<DerivativeName, Summed>>;

/** About the origin without the strut, and about the balance point with it; alpha in degrees. */
export function lateralParts(design: Design, alpha: number, strips: number): Lateral {
  const resolution = { strips, stabilizerStrips: strips / 2, rows: 1 };
  const craft = craftFor(design, design.brief.depth, resolution);
  const flow = new FlowPool().solve('parts', craft, 'whole');
  mixAlpha(flow.symmetric, (alpha * Math.PI) / 180, flow.base);
  const { balance } = design.brief;
  const at = { area: craft.wing.projectedArea, span: craft.wing.span };
  const sum = (who: 'foil' | 'craft', x: number, z: number) => {
    const loads = lateralLoads(flow.system, flow.base, flow[who]);
    const parts = ([0, 1, 2] as const).map((part) =>
      derivativesAbout(loads.beta[part], loads.rollRate[part], loads.yawRate[part], { ...at, x, z }),
    );
    const names = Object.keys(parts[0]!) as DerivativeName[];
    return Object.fromEntries(
      names.map((name) => {
        const values = parts.map((part) => part[name]);
        const value = values.reduce((total, one) => total + one, 0);
        return [name, { value, largest: Math.max(...values.map(Math.abs)) }];
      }),
    ) as Record<DerivativeName, Summed>;
  };
  return { foil: sum('foil', 0, 0), craft: sum('craft', balance.x, balance.height) };
}
