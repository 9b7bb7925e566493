/** The questions under the shape, in the order a builder asks them: one line each; their panels load when asked. */
import { html, type TemplateResult } from 'lit';
import type { Exporter } from '../session/exporter.ts';
import type { Ghost } from '../session/ghost.ts';
import type { Proposals } from '../session/proposals.ts';
import type { Session } from '../session/session.ts';
import type { Studies } from '../session/studies.ts';
import type { UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import type { Report } from '../solver/report.ts';

export interface QuestionContext {
  design: Design;
  report: Report | null;
  units: UnitSystem;
  ghost: Ghost | null;
  session: Session;
  /** Grows whenever the session has something new. */
  tick: number;
  studies: Studies;
  exporter: Exporter;
  proposals: Proposals;
}

export interface Question {
  id: string;
  label: string;
  load: () => Promise<unknown>;
  render: (context: QuestionContext) => TemplateResult;
}

export const QUESTIONS: readonly Question[] = [
  {
    id: 'spread',
    label: 'Spread: how is lift shared?',
    load: () => Promise.all([import('./panels/spread-panel.ts'), import('./spread/stall-section.ts')]),
    render: ({ design, report, units, ghost, studies }) =>
      html`<spread-panel .design=${design} .report=${report} .units=${units} .ghost=${ghost}></spread-panel>
        <spread-stall .design=${design} .units=${units} .studies=${studies} .ghost=${ghost}></spread-stall>`,
  },
  {
    id: 'curve',
    label: 'Curve: what does droop buy?',
    load: () => import('./panels/curve-panel.ts'),
    render: ({ design, units, studies, ghost, session }) =>
      html`<curve-panel
        .design=${design}
        .units=${units}
        .studies=${studies}
        .ghost=${ghost}
        .ridden=${session.ridden}
      ></curve-panel>`,
  },
  {
    id: 'hold',
    label: 'Hold: does it keep its line?',
    load: () => import('./panels/coupling-panel.ts'),
    render: ({ design, report, units, studies, ghost, session }) =>
      html`<coupling-panel
        .design=${design}
        .report=${report}
        .units=${units}
        .studies=${studies}
        .ghost=${ghost}
        .ridden=${session.ridden}
      ></coupling-panel>`,
  },
  {
    id: 'speed',
    label: 'Speed: from take-off to top',
    load: () => import('./panels/speed-panel.ts'),
    render: ({ design, units, studies, ghost }) =>
      html`<speed-panel .design=${design} .units=${units} .studies=${studies} .ghost=${ghost}></speed-panel>`,
  },
  {
    id: 'stiffness',
    label: 'Stiffness: what gives, how thin?',
    load: () => import('./panels/stiffness-panel.ts'),
    render: ({ design, units, studies, ghost }) =>
      html`<stiffness-panel .design=${design} .units=${units} .studies=${studies} .ghost=${ghost}></stiffness-panel>`,
  },
  {
    id: 'section',
    label: 'Section: what it lifts and drags',
    load: () => import('./panels/section-panel.ts'),
    render: ({ design, units, studies, ghost }) =>
      html`<section-panel .design=${design} .units=${units} .studies=${studies} .ghost=${ghost}></section-panel>`,
  },
  {
    id: 'skin',
    label: 'Skin: how smooth is smooth enough?',
    load: () => import('./panels/skin-panel.ts'),
    render: ({ design, units, studies, ghost }) =>
      html`<skin-panel .design=${design} .units=${units} .studies=${studies} .ghost=${ghost}></skin-panel>`,
  },
  {
    id: 'propose',
    label: 'Propose: which wing does it best?',
    load: () => import('./panels/propose-panel.ts'),
    render: ({ design, units, studies, proposals, session }) =>
      html`<propose-panel
        .design=${design}
        .units=${units}
        .studies=${studies}
        .proposals=${proposals}
        .ghost=${session.ghosts.kept}
      ></propose-panel>`,
  },
  {
    id: 'build',
    label: 'Build: from the screen to the mould',
    load: () => import('./panels/build-panel.ts'),
    render: ({ design, units, studies, exporter, ghost }) =>
      html`<build-panel
        .design=${design}
        .units=${units}
        .studies=${studies}
        .exporter=${exporter}
        .ghost=${ghost}
      ></build-panel>`,
  },
  {
    id: 'beside',
    label: 'Beside: next to the ones kept',
    load: () => import('./panels/beside-panel.ts'),
    render: ({ session, units, tick }) =>
      html`<beside-panel .session=${session} .units=${units} .tick=${tick}></beside-panel>`,
  },
];
