/** Reads what tables say of a ghost: each figure, the ghost's below it and the difference. */

export interface GhostCell {
  caption: string;
  row: string;
  own: string;
  ghost: string;
  difference: string; // empty where there is none
}

/** Every cell with a ghost's figure in the tables within, those of inner components too. */
export function ghostCells(root: ShadowRoot | HTMLElement): GhostCell[] {
  const own = [...root.querySelectorAll<HTMLElement>('td .ghost')].map((mark): GhostCell => {
    const cell = mark.closest('td')!;
    const above = [...mark.parentNode!.childNodes].filter(
      (node) => node !== mark && !(node instanceof Comment),
    );
    const [, ghost, difference] = [...mark.children].map((part) => part.textContent ?? '');
    return {
      caption: titleOf(cell.closest('table')!),
      row: cell.closest('tr')!.cells[0]!.textContent!.trim(),
      own: above
        .map((node) => node.textContent)
        .join('')
        .trim(),
      ghost: ghost!.trim(),
      difference: (difference ?? '').trim().replace(/^\(|\)$/g, ''),
    };
  });
  const inner = [...root.querySelectorAll('*')].flatMap((each) =>
    each.shadowRoot ? ghostCells(each.shadowRoot) : [],
  );
  return [...own, ...inner];
}

/** The caption without the key to the ghost's figures. */
function titleOf({ caption }: HTMLTableElement): string {
  const key = caption!.querySelector('.ghost-key')?.textContent ?? '';
  return caption!.textContent!.replace(key, '').replaceAll(/\s+/g, ' ').trim();
}

interface Read {
  value: number;
  slack: number; // half of the last digit written
}

/** The first number of a cell, forward and to port counted below zero; null where there is none. */
export function numberIn(text: string): Read | null {
  const found = /[−-]?\d[\d\u202f]*(\.\d+)?/.exec(text);
  if (!found) return /^(at the strut|nowhere)/.test(text) ? { value: 0, slack: 0.5 } : null;
  const digits = found[0].replaceAll('\u202f', '').replace('−', '-');
  const way = /forward|to port/.test(text) ? -1 : 1;
  const decimals = found[1] ? found[1].length - 1 : 0;
  const rounded = decimals === 0 ? /0*$/.exec(digits)![0].length : 0; // "1 100 Hz" has two or three digits
  return { value: way * Number(digits), slack: 0.5 * 10 ** (rounded - decimals) };
}

/** Cells whose difference is not the figure less the ghost's, as far as the written digits tell. */
export function falseDifferences(cells: readonly GhostCell[]): string[] {
  return cells.flatMap(({ caption, row, own, ghost, difference }) => {
    const [a, b, c] = [numberIn(own), numberIn(ghost), numberIn(difference)];
    if (!a || !b || !c) return [];
    const isTrue = Math.abs(a.value - b.value - c.value) <= 1.001 * (a.slack + b.slack + c.slack);
    return isTrue ? [] : [`${caption}, ${row}: ${own} less ${ghost} is not ${difference}`];
  });
}
