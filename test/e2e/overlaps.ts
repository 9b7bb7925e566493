import type { Page } from 'playwright';

/**
 * Texts and fields below an element of the page that lie on one another as the page is laid out now: each pair a line.
 * What a box cuts off is not seen and not counted; a column that stays at the right of a table as it slides may cover it.
 */
export function overlaps(page: Page, within: string): Promise<string[]> {
  return page.evaluate((within) => {
    interface Box {
      left: number;
      right: number;
      top: number;
      bottom: number;
    }
    const pieces: (Box & { text: string; owner: Element | null })[] = [];
    const shared = (a: Box, b: Box): Box => ({
      left: Math.max(a.left, b.left),
      right: Math.min(a.right, b.right),
      top: Math.max(a.top, b.top),
      bottom: Math.min(a.bottom, b.bottom),
    });
    const isSeen = ({ left, right, top, bottom }: Box, least: number) =>
      right - left > least && bottom - top > least;
    const add = (box: Box, window: Box, text: string, owner: Element | null) => {
      const part = shared(box, window);
      if (isSeen(part, 2)) pieces.push({ ...part, text: text.trim().slice(0, 30), owner });
    };
    const APART = 'svg, canvas, math, style, script, option, .visually-hidden, .skip, input[type=file]';
    const walk = (node: Node, window: Box): void => {
      if (node instanceof Text && node.data.trim()) {
        const range = document.createRange();
        range.selectNodeContents(node);
        for (const box of range.getClientRects()) add(box, window, node.data, node.parentElement);
      }
      if (!(node instanceof Element) || node.matches(APART) || !node.checkVisibility()) return;
      const { position, right, overflowX } = getComputedStyle(node);
      if (position === 'sticky' && right !== 'auto') return;
      const box = node.getBoundingClientRect();
      if (node.matches('button, input, textarea, select')) {
        add(box, window, `${node.localName} ${node.textContent}`, node);
        return;
      }
      const inside = overflowX === 'visible' ? window : shared(window, box);
      for (const child of (node.shadowRoot ?? node).childNodes) walk(child, inside);
      if (node instanceof HTMLSlotElement) for (const child of node.assignedNodes()) walk(child, inside);
    };
    const { clientWidth } = document.documentElement;
    walk(document.querySelector(within)!, { left: 0, right: clientWidth, top: -1e6, bottom: 1e6 });
    pieces.sort((a, b) => a.top - b.top);
    const found: string[] = [];
    for (const [k, one] of pieces.entries())
      for (let j = k + 1; j < pieces.length && pieces[j]!.top < one.bottom; j++) {
        const other = pieces[j]!;
        if (one.owner !== other.owner && isSeen(shared(one, other), 4))
          found.push(`“${one.text}” and “${other.text}” lie on one another`);
      }
    return found;
  }, within);
}
