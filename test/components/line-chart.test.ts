import { expect, fixture, html } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { type ChartSeries, joinColumns, toCsv } from '../../src/components/chart-columns.ts';
import { steadyRange } from '../../src/components/chart-options.ts';
import '../../src/components/line-chart.ts';
import type { LineChart } from '../../src/components/line-chart.ts';
import '../../web/tokens.css';

const WING: ChartSeries = { name: 'wing', x: [0, 100, 200, 300], y: [4, 3, 2, 1], colour: '--carry' };
const TAIL: ChartSeries = { name: 'stabilizer', x: [50, 150], y: [-1, -2], colour: '--tail', dash: [4, 2] };

const oneFrame = () => new Promise(requestAnimationFrame);
const frame = () => oneFrame().then(oneFrame); // sizes are followed a frame later

async function make(width = 500) {
  const box = await fixture(html`<div style="width: ${width}px">
    <line-chart
      heading="Lift per span"
      summary="Lift falls from 4 to 1 N/m."
      x-name="from the middle"
      x-unit="mm"
      y-name="lift"
      y-unit="N/m"
      .series=${[WING, TAIL]}
    ></line-chart>
  </div>`);
  const chart = box.querySelector<LineChart>('line-chart')!;
  await frame();
  await frame();
  return { box: box as HTMLElement, chart, root: chart.shadowRoot! };
}

/** Pixels of a colour near the one given. */
function inkOf(canvas: HTMLCanvasElement, [r, g, b]: readonly [number, number, number]): number {
  const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
  let count = 0;
  for (let k = 0; k < data.length; k += 4)
    if (
      data[k + 3]! > 200 &&
      Math.abs(data[k]! - r) + Math.abs(data[k + 1]! - g) + Math.abs(data[k + 2]! - b) < 24
    )
      count++;
  return count;
}

/** A custom property of tokens.css as red, green, blue. */
function rgbOf(name: string, inside: Element): [number, number, number] {
  const probe = document.createElement('i');
  probe.style.color = `var(${name})`;
  inside.parentElement!.append(probe);
  const [r, g, b] = getComputedStyle(probe).color.match(/\d+/g)!.map(Number);
  probe.remove();
  return [r!, g!, b!];
}

const tableButton = (root: ShadowRoot) =>
  [...root.querySelectorAll('button')].find((button) => button.textContent!.includes('table'))!;

describe('line chart', () => {
  it('is accessible: an image with a name that says what is to be seen', async () => {
    const { chart, root } = await make();
    await expect(chart).to.be.accessible();
    expect(root.querySelector('[role="img"]')!.getAttribute('aria-label')).to.equal(
      'Lift falls from 4 to 1 N/m.',
    );
  });

  it('is drawn, in the colours of the page', async () => {
    const { chart, root } = await make();
    expect(getComputedStyle(root.querySelector('.u-wrap')!).position).to.equal('relative'); // uPlot's own sheet is there
    const canvas = root.querySelector('canvas')!;
    expect(inkOf(canvas, rgbOf('--carry', chart))).to.be.above(100);
    expect(inkOf(canvas, rgbOf('--tail', chart))).to.be.above(20);
  });

  it('draws new values in place, and is made anew only for other lines', async () => {
    const { chart, root } = await make();
    const canvas = root.querySelector('canvas')!;
    const before = canvas.toDataURL();
    chart.series = [{ ...WING, y: [4, 4, 4, 3] }, TAIL];
    await frame();
    expect(root.querySelector('canvas')).to.equal(canvas);
    expect(canvas.toDataURL()).not.to.equal(before);
    chart.series = [WING];
    await frame();
    expect(root.querySelectorAll('canvas')).to.have.length(1);
    expect(root.querySelector('canvas')).not.to.equal(canvas);
  });

  it('follows its width', async () => {
    const { box, root } = await make();
    box.style.width = '320px';
    await frame();
    expect(root.querySelector('.u-wrap')!.getBoundingClientRect().width).to.be.closeTo(320, 1);
  });

  it('is made anew after it was moved in the page', async () => {
    const { box, chart, root } = await make();
    chart.remove();
    expect(root.querySelector('canvas')).to.equal(null);
    box.append(chart);
    await frame();
    expect(root.querySelectorAll('canvas')).to.have.length(1);
  });

  it('reads out the values under the cursor', async () => {
    const { root } = await make();
    const over = root.querySelector<HTMLElement>('.u-over')!;
    const box = over.getBoundingClientRect();
    const at = { clientX: box.left + box.width / 3, clientY: box.top + 20, bubbles: true };
    over.dispatchEvent(new MouseEvent('mouseenter', at));
    over.dispatchEvent(new MouseEvent('mousemove', at));
    await frame();
    const read = [...root.querySelectorAll('output')].map((output) => output.textContent);
    expect(read).to.deep.equal(['3', '\u22122', 'at 100 mm']);
    over.dispatchEvent(new MouseEvent('mouseleave', at));
  });

  it('turns into a real table and back', async () => {
    const { chart, root } = await make();
    tableButton(root).click();
    await chart.updateComplete;
    await expect(chart).to.be.accessible();
    const headings = [...root.querySelectorAll('thead th')].map((cell) => cell.textContent);
    expect(headings).to.deep.equal(['from the middle, mm', 'wing, N/m', 'stabilizer, N/m']);
    const rows = [...root.querySelectorAll<HTMLTableRowElement>('tbody tr')];
    expect(rows.map(({ cells }) => [...cells].map((cell) => cell.textContent).join('|'))).to.deep.equal([
      '0|4|',
      '50|4|\u22121',
      '100|3|\u22122',
      '150|3|\u22122',
      '200|2|',
      '300|1|',
    ]);
    expect(tableButton(root).getAttribute('aria-pressed')).to.equal('true');
    tableButton(root).click();
    await chart.updateComplete;
    expect(root.querySelector('table')).to.equal(null);
    expect(root.querySelector('canvas')!.getBoundingClientRect().width).to.be.above(100);
  });

  it('copies the table as comma-separated values', async () => {
    const { chart, root } = await make();
    tableButton(root).click();
    await chart.updateComplete;
    const copied: string[] = [];
    const { clipboard } = navigator;
    Object.defineProperty(navigator, 'clipboard', {
      configurable: true,
      value: { writeText: async (text: string) => copied.push(text) },
    });
    [...root.querySelectorAll('button')].find((button) => button.textContent!.includes('CSV'))!.click();
    await frame();
    Object.defineProperty(navigator, 'clipboard', { configurable: true, value: clipboard });
    expect(copied[0]!.split('\r\n').slice(0, 3)).to.deep.equal([
      '"from the middle, mm","wing, N/m","stabilizer, N/m"',
      '0,4,',
      '50,3.5,-1',
    ]);
    expect(root.querySelector('[role="status"]')!.textContent).to.equal('Copied.');
  });
});

describe('columns of a chart', () => {
  it('read each series between its own places and never beyond them', () => {
    expect(joinColumns([WING, TAIL])).to.deep.equal({
      x: [0, 50, 100, 150, 200, 300],
      y: [
        [4, 3.5, 3, 2.5, 2, 1],
        [null, -1, -1.5, -2, null, null],
      ],
    });
  });

  it('take places as one that lie nearer than a third of a percent of the range', () => {
    expect(joinColumns([WING, { ...TAIL, x: [0.5, 100.5], y: [1, 2] }]).x).to.deep.equal(WING.x);
  });

  it('quote a name that holds a comma or a quote (RFC 4180)', () => {
    expect(toCsv(['a, b', 'the "c"'], { x: [1], y: [[null]] })).to.equal('"a, b","the ""c"""\r\n1,');
  });

  it('have no rows without series', () => {
    expect(joinColumns([])).to.deep.equal({ x: [], y: [] });
  });
});

describe('range of an axis', () => {
  it('begins at zero and moves in steps', () => {
    expect(steadyRange(2, 1600)).to.deep.equal(steadyRange(2, 1610));
    expect(steadyRange(2, 1600)[0]).to.equal(-0 + 0);
    const [low, high] = steadyRange(-120, 1600);
    expect(low).to.be.below(-120);
    expect(high).to.be.above(1600);
    expect(steadyRange(0, 0)).to.deep.equal([0, 1]);
  });
});
