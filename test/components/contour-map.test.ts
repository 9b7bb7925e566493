import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { describe, it } from 'vitest';
import type { ContourMap } from '../../src/components/curve/contour-map.ts';
import { areaWithout, contourLine, roundLevels } from '../../src/components/curve/contour-shapes.ts';
import '../../src/components/curve/droop-map.ts';
import type { DroopMapView } from '../../src/components/curve/droop-map.ts';
import '../../src/components/curve/section-choices.ts';
import type { SectionChoices } from '../../src/components/curve/section-choices.ts';
import type { DesignEditEvent } from '../../src/components/events.ts';
import { withValueAt } from '../../src/session/paths.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import demo from '../../web/demos/curved-race.json';
import '../../web/tokens.css';

const SLOW = { timeout: 90_000 };
const WAIT = { timeout: 80_000 };

/** Studies on the page itself: no worker in a component test. */
const onPage = () =>
  new Studies({
    makeWorker: () => {
      throw new Error('none here');
    },
    loadStudies: async () => STUDIES,
  });

/** Follows its edits, as the page does. */
function following<E extends HTMLElement & { design: Design | null }>(element: E): DesignEditEvent[] {
  const edits: DesignEditEvent[] = [];
  element.addEventListener('design-edit', (event) => {
    edits.push(event);
    for (const { path, value } of event.detail.changes)
      element.design = withValueAt(element.design!, path, value);
  });
  return edits;
}

/** x along a row, y from row to row. */
const plane = (columns: number, rows: number, f: (x: number, y: number) => number) => ({
  columns,
  rows,
  values: Array.from({ length: columns * rows }, (_, k) => f(k % columns, Math.floor(k / columns))),
});

const numbers = (path: string) => [...path.matchAll(/-?[\d.]+/g)].map(([text]) => Number(text));

describe('contour map', () => {
  it('keeps the limit’s name inside a phone’s map, and no value on it', async () => {
    const side = Array.from({ length: 11 }, (_, k) => k);
    const axis = { unit: '°', decimals: 0, places: side };
    const { values } = plane(11, 11, (x, y) => x + y);
    const field = { name: 'static margin', unit: '', decimals: 1, values };
    const box = await fixture(html`<div style="width: 358px; font-family: system-ui">
      <contour-map
        label="map"
        .across=${{ ...axis, name: 'droop' }}
        .up=${{ ...axis, name: 'area' }}
        .shade=${field}
        .lines=${field}
        .limit=${{ ...field, name: 'static margin −12 %', level: 17.5 }}
      ></contour-map>
    </div>`);
    const map = box.querySelector('contour-map')!;
    await map.updateComplete;
    const frame = map.renderRoot.querySelector('svg')!.getBoundingClientRect();
    const [name, ...others] = [...map.renderRoot.querySelectorAll('.tag')]
      .reverse()
      .map((tag) => tag.getBoundingClientRect());
    expect(name!.right).to.be.at.most(frame.right);
    for (const { left, right, top, bottom } of others)
      expect(
        right <= name!.left || left >= name!.right || bottom <= name!.top || top >= name!.bottom,
      ).to.equal(true);
  });
});

describe('contour shapes', () => {
  it('the line of a tilted plane is where the plane has that height, without the rim', () => {
    const { path, label } = contourLine(
      plane(9, 7, (x, y) => x + 2 * y),
      7,
    );
    const found = numbers(path);
    expect(found.length).to.be.greaterThan(6);
    for (let k = 0; k < found.length; k += 2) expect(found[k]! + 2 * found[k + 1]!).to.be.closeTo(7, 1e-3); // x + 2y = 7
    expect(label!.x + 2 * label!.y).to.be.closeTo(7, 1e-3);
  });

  it('a round hill has a closed line at its height, and a level above it none', () => {
    const hill = plane(41, 41, (x, y) => 100 - (x - 20) ** 2 - (y - 20) ** 2);
    const found = numbers(contourLine(hill, 19).path); // radius 9
    for (let k = 0; k < found.length; k += 2)
      expect(Math.hypot(found[k]! - 20, found[k + 1]! - 20)).to.be.closeTo(9, 0.05); // straight between cases
    expect(contourLine(hill, 101).path).to.equal('');
  });

  it('marks the cases without a value, and none where all have one', () => {
    const holed = plane(6, 5, (x, y) => (x > 3 && y > 2 ? Number.NaN : x));
    expect(areaWithout(holed)).not.to.equal('');
    expect(areaWithout(plane(6, 5, (x) => x))).to.equal('');
  });

  it('levels are round, inside the range and not too many', () => {
    expect(roundLevels(0.3, 10.6, 6)).to.deep.equal([2, 4, 6, 8, 10]);
    expect(roundLevels(-0.31, 0.29, 4)).to.deep.equal([-0.2, 0, 0.2]);
    expect(roundLevels(3, 3, 6)).to.deep.equal([]);
  });
});

describe('droop-map', () => {
  const open = async () => {
    const view = await fixture<DroopMapView>(
      html`<droop-map .design=${demo as Design} .studies=${onPage()}></droop-map>`,
    );
    view.scrollIntoView();
    const edits = following(view);
    await waitUntil(() => view.renderRoot.querySelector('contour-map'), 'the map', WAIT);
    const map = view.renderRoot.querySelector<ContourMap>('contour-map')!;
    await map.updateComplete;
    return { view, map, edits, box: map.renderRoot.querySelector<HTMLElement>('.map')! };
  };
  const press = async (map: ContourMap, box: HTMLElement, key: string) => {
    box.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
    await map.updateComplete;
  };

  it('is accessible, with the present design on it, lines, shades and the limit', SLOW, async () => {
    const { view, map } = await open();
    await expect(view).to.be.accessible();
    expect(map.renderRoot.querySelectorAll('.line').length).to.be.greaterThan(2);
    expect(map.renderRoot.querySelector('.limit')!.getAttribute('d')).not.to.equal(''); // 0 % lies on this map
    expect(map.renderRoot.querySelector('.present')).to.exist;
    expect(view.renderRoot.textContent).to.match(/Static margin runs from/);
  });

  it('arrow keys look, Enter takes the design there as one settled edit', SLOW, async () => {
    const { view, map, edits, box } = await open();
    const before = surfaceOf(view.design!.stabilizer!).projectedArea;
    await press(map, box, 'ArrowUp');
    await press(map, box, 'ArrowRight');
    expect(map.renderRoot.querySelector('output')!.textContent).to.match(
      /wing droop [\d.]+°.*hold index [\d.]+/,
    );
    expect(edits).to.have.length(0);
    await press(map, box, 'Enter');
    expect(edits).to.have.length(1);
    expect(edits[0]!.detail.phase).to.equal('settled');
    const after = surfaceOf(view.design!.stabilizer!).projectedArea;
    expect(after / before).to.be.closeTo(1 + 1 / 30, 1e-4); // one of 31 rows from a half to one and a half
    expect((view.design!.wing.droop as { tipAngle: number }).tipAngle).to.be.closeTo(27, 0.01); // 45/40 a column from 25.9
  });

  it('a click takes the design where it points', SLOW, async () => {
    const { view, edits, box } = await open();
    const { left, bottom, width, height } = box.getBoundingClientRect();
    box.dispatchEvent(
      new MouseEvent('click', { clientX: left + width / 3, clientY: bottom - 0.75 * height, bubbles: true }),
    );
    expect(edits).to.have.length(1);
    expect((view.design!.wing.droop as { tipAngle: number }).tipAngle).to.be.closeTo(15, 0.3);
    const share =
      surfaceOf(view.design!.stabilizer!).projectedArea /
      surfaceOf((demo as Design).stabilizer!).projectedArea;
    expect(share).to.be.closeTo(1.25, 0.01);
  });

  const place = async (view: DroopMapView, map: ContourMap) => {
    await view.updateComplete;
    await map.updateComplete;
    const mark = map.renderRoot.querySelector<HTMLElement>('.ghost');
    return mark && [mark.style.left, mark.style.bottom].map(Number.parseFloat);
  };

  it('is a dashed ring where its droop and its stabilizer lie, and said in words', SLOW, async () => {
    const { view, map } = await open();
    const { wing, stabilizer } = demo as Design;
    const arm = { ...(demo as Design), stabilizer: { ...stabilizer!, arm: 0.5 } };
    const design: Design = { ...arm, wing: { ...wing, droop: { kind: 'arc', tipAngle: 9 } } };
    view.ghost = { design, report: null };
    // 9 of 45 degrees across; the same area, in the middle between half of it and one and a half
    const [left, bottom] = (await place(view, map))!;
    expect(left).to.be.closeTo(20, 0.01);
    expect(bottom).to.be.closeTo(50, 0.01);
    expect(view.renderRoot.textContent).to.contain('The dashed ring is the ghost’s 9.0° of droop');
    await expect(view).to.be.accessible();
    view.ghost = {
      design: { ...design, wing: { ...wing, droop: { kind: 'arc', tipAngle: 60 } } },
      report: null,
    };
    expect(await place(view, map)).to.equal(null);
    expect(view.renderRoot.textContent).to.contain('lies outside this map');
    view.ghost = { design: { ...design, stabilizer: null }, report: null };
    expect(await place(view, map)).to.equal(null);
  });
});

describe('section-choices', () => {
  it('is accessible, compares three sections and refuses a wrong code', SLOW, async () => {
    const view = await fixture<SectionChoices>(
      html`<section-choices .design=${demo as Design} .studies=${onPage()}></section-choices>`,
    );
    view.scrollIntoView();
    const edits = following(view);
    await waitUntil(() => view.renderRoot.querySelector('table'), 'the table', WAIT);
    await expect(view).to.be.accessible();
    expect(
      [...view.renderRoot.querySelectorAll('thead th')].map(({ textContent }) => textContent!.trim()),
    ).to.deep.equal(['1411', '2411', '4411']);
    expect(view.renderRoot.textContent).to.contain('about the stream');
    const field = view.renderRoot.querySelector('text-field')!;
    const input = field.renderRoot.querySelector('input')!;
    input.value = '24';
    input.dispatchEvent(new Event('input'));
    input.dispatchEvent(new Event('change'));
    await field.updateComplete;
    expect(field.renderRoot.textContent).to.contain('no four-digit section');
    expect(edits).to.have.length(0);
  });
});
