import { css } from 'lit';
import { answerStyles } from '../answer-styles.ts';
import { tableStyles } from '../figure-table.ts';
import { studyStyles } from '../study-styles.ts';

/** Looks shared by the parts of Speed. */
export const sectionStyles = [
  answerStyles,
  studyStyles,
  tableStyles,
  css`
    .controls {
      --control-width: 13rem;
    }
    .charts {
      row-gap: 1rem;
    }
    .tables {
      display: grid;
      grid-template-columns: repeat(auto-fit, minmax(min(100%, 26rem), 1fr));
      gap: 1rem 1.5rem;
      margin-top: 0.6rem;
      align-items: start;
    }
    .tables.wide {
      grid-template-columns: repeat(auto-fit, minmax(min(100%, 34rem), 1fr));
    }
  `,
];
