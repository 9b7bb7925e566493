import { expect, fixture, html, nextFrame, waitUntil } from '@open-wc/testing';
import { beforeAll, beforeEach, describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import { HALF_SIGHT, NAMED_VIEWS } from '../../src/components/solid/camera.ts';
import { pictureSize } from '../../src/components/solid/picture.ts';
import '../../src/components/solid-fold.ts';
import '../../src/components/solid-view.ts';
import type { SolidFold } from '../../src/components/solid-fold.ts';
import type { SolidView } from '../../src/components/solid-view.ts';
import { Studies } from '../../src/session/studies.ts';
import type { TransitionMap } from '../../src/solver/studies/transition-map.ts';
import '../../web/tokens.css';
import { Pointer } from '../support/pointer.ts';
import { type Sample, sample as solveSample } from '../support/sample-report.ts';

beforeEach(() => localStorage.clear());

beforeAll(() => void sample(), 60_000);

const solved = new Map<string, Sample>();

/** Designs and their figures, each solved once: nothing here changes them. */
function sample(...[demo = 'curved', changes = {}]: Parameters<typeof solveSample>): Sample {
  const key = JSON.stringify([demo, changes]);
  const known = solved.get(key) ?? solveSample(demo, changes);
  solved.set(key, known);
  return known;
}

const BUSY = { timeout: 60_000 }; // without a graphics card, on a machine that does other things
const PATIENT = { timeout: 8000 };

const SILENT = {
  loadStudies: async () => ({}),
  makeWorker: () => {
    throw new Error('none here');
  },
};

async function show({ design, report }: Sample, studies = new Studies(SILENT)) {
  const box = await fixture(
    html`<div style="width: 340px">
      <solid-view .design=${design} .report=${report} .studies=${studies}></solid-view>
    </div>`,
  );
  const view = box.querySelector<SolidView>('solid-view')!;
  await waitUntil(() => pictureOf(view).frames > 0, 'first frame', PATIENT);
  await view.updateComplete;
  return view;
}

const pictureOf = (view: SolidView) => view.shadowRoot!.querySelector('solid-canvas')!;
const canvasOf = (view: SolidView) => pictureOf(view).shadowRoot!.querySelector('canvas')!;
const labelOf = (view: SolidView) => canvasOf(view).getAttribute('aria-label')!;
const textOf = (view: SolidView) => view.shadowRoot!.textContent!.replace(/\s+/g, ' ');
const button = (view: SolidView, name: string) =>
  [view.shadowRoot!, pictureOf(view).shadowRoot!]
    .flatMap((root) => [...root.querySelectorAll('button')])
    .find((each) => (each.getAttribute('aria-label') ?? each.textContent!.trim()) === name)!;

/** The view as it would be drawn now, RGBA. */
function pixels(view: SolidView, width = 160, height = 100): Uint8ClampedArray {
  const copy = document.createElement('canvas');
  [copy.width, copy.height] = [width, height];
  const pen = copy.getContext('2d', { willReadFrequently: true })!;
  pen.drawImage(pictureOf(view).drawAt(width, height)!, 0, 0, width, height);
  return pen.getImageData(0, 0, width, height).data;
}

const opaque = (data: Uint8ClampedArray) => data.filter((value, k) => k % 4 === 3 && value > 250).length;
const differing = (a: Uint8ClampedArray, b: Uint8ClampedArray) =>
  a.filter(
    (value, k) => k % 4 === 0 && [0, 1, 2, 3].some((n) => Math.abs(a[k + n]! - b[k + n]!) > 24) && value >= 0,
  ).length;

/** Until nothing moves any more. */
async function rest(view: SolidView) {
  let before = -1;
  await waitUntil(
    () => {
      const { frames } = pictureOf(view);
      const isStill = frames === before;
      before = frames;
      return isStill;
    },
    'the eye at rest',
    { interval: 120, timeout: 5000 },
  );
  await view.updateComplete;
}

async function choosePaint(view: SolidView, value: string) {
  const select = view.shadowRoot!.querySelector('choice-field')!.shadowRoot!.querySelector('select')!;
  await userEvent.selectOptions(select, value);
  await view.updateComplete;
}

describe('the view to turn', BUSY, () => {
  it('is accessible, says what it shows, and draws the foil', async () => {
    const view = await show(sample());
    await expect(view).to.be.accessible();
    expect(labelOf(view)).to.match(
      /^The foil in three dimensions, seen three-quarter \(from ahead and port, 20° above\)/,
    );
    expect(labelOf(view)).to.match(
      /wing \d+\smm from tip to tip, tips \d+(\.\d)?\smm down, stabilizer 610\smm aft, strut 950\smm/,
    );
    const solid = opaque(pixels(view));
    expect(solid).to.be.greaterThan(500); // of 16 000
    expect(solid).to.be.lessThan(8000);
  });

  it('turns by the keyboard: arrows, named views, nearer, shifted', async () => {
    const view = await show(sample());
    const canvas = canvasOf(view);
    canvas.focus();
    const start = pixels(view);
    await userEvent.keyboard('{ArrowRight}');
    await view.updateComplete;
    expect(labelOf(view)).to.contain('from ahead and port');
    expect(differing(start, pixels(view))).to.be.greaterThan(300);
    await userEvent.keyboard('{ArrowDown}{ArrowDown}{ArrowDown}{ArrowDown}{ArrowDown}');
    await view.updateComplete;
    expect(labelOf(view)).to.contain('30° below');
    for (const [k, { label, pitch }] of NAMED_VIEWS.entries()) {
      await userEvent.keyboard(String(k + 1));
      await view.updateComplete;
      expect(button(view, label).getAttribute('aria-pressed')).to.equal('true');
      expect(pictureOf(view).goal!.pitch).to.equal(pitch);
      expect(textOf(view)).to.contain(label);
    }
    const far = opaque(pixels(view));
    await userEvent.keyboard('++');
    expect(opaque(pixels(view))).to.be.greaterThan(1.15 * far);
    await userEvent.keyboard('----');
    expect(opaque(pixels(view))).to.be.lessThan(far);
    const { x, y, z } = pictureOf(view).goal!;
    await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}');
    expect(pictureOf(view).goal).to.not.include({ x, y, z });
    await userEvent.keyboard('0');
    await rest(view);
    expect(opaque(pixels(view))).to.be.closeTo(far, 0.02 * far);
  });

  it('leaves other keys to the page', async () => {
    const view = await show(sample());
    canvasOf(view).focus();
    const heard: string[] = [];
    const listen = (event: KeyboardEvent) =>
      heard.push(event.defaultPrevented ? `kept ${event.key}` : event.key);
    window.addEventListener('keydown', listen);
    await userEvent.keyboard('7x{Escape}{Control>}+{/Control}');
    window.removeEventListener('keydown', listen);
    expect(heard).to.include.members(['7', 'x', 'Escape', '+']);
    expect(heard.filter((key) => key.startsWith('kept'))).to.eql([]);
  });

  it('turns with the pointer that holds it, at once, and by the buttons beside it', async () => {
    const view = await show(sample());
    const { yaw, pitch } = pictureOf(view).goal!;
    new Pointer(canvasOf(view)).press().move(100, 0).move(0, 40).release();
    const goal = pictureOf(view).goal!;
    expect(goal.yaw - yaw).to.be.closeTo(0.7, 1e-9);
    expect(goal.pitch - pitch).to.be.closeTo(0.28, 1e-9);
    button(view, 'Look from lower').click();
    expect(pictureOf(view).goal!.pitch).to.be.closeTo(goal.pitch - Math.PI / 18, 1e-9);
    button(view, 'Nearer').click();
    expect(pictureOf(view).goal!.range).to.be.lessThan(goal.range);
  });

  it('leaves up and down to the page’s scrolling, and the wheel unless Ctrl is held', async () => {
    const view = await show(sample());
    expect(getComputedStyle(canvasOf(view)).touchAction).to.equal('pan-y');
    const { range } = pictureOf(view).goal!;
    const wheel = (ctrlKey: boolean) => {
      const event = new WheelEvent('wheel', { deltaY: -120, ctrlKey, cancelable: true, bubbles: true });
      canvasOf(view).dispatchEvent(event);
      return event.defaultPrevented;
    };
    expect(wheel(false)).to.equal(false);
    expect(pictureOf(view).goal!.range).to.equal(range);
    expect(wheel(true)).to.equal(true);
    expect(pictureOf(view).goal!.range).to.be.lessThan(range);
  });

  it('comes nearer between two fingers and shifts with them', async () => {
    const view = await show(sample());
    const canvas = canvasOf(view);
    canvas.setPointerCapture = () => {};
    const send = (type: string, pointerId: number, clientX: number, clientY: number) =>
      canvas.dispatchEvent(
        new PointerEvent(type, { pointerId, clientX, clientY, pointerType: 'touch', bubbles: true }),
      );
    const before = pictureOf(view).goal!;
    send('pointerdown', 1, 200, 200);
    send('pointerdown', 2, 300, 200);
    send('pointermove', 2, 400, 200);
    const after = pictureOf(view).goal!;
    expect(after.range).to.be.closeTo(before.range - Math.log(2), 1e-9);
    const height = 2 * Math.tan(HALF_SIGHT) * Math.exp(before.range);
    const moved = Math.hypot(after.x - before.x, after.y - before.y, after.z - before.z);
    expect(moved).to.be.closeTo((height * 50) / canvas.clientHeight, 1e-6);
    send('pointerup', 1, 200, 200);
    send('pointerup', 2, 400, 200);
    send('pointermove', 2, 500, 200);
    expect(pictureOf(view).goal).to.eql(after);
  });

  it('follows the design within a frame, and draws nothing while nothing changes', async () => {
    const view = await show(sample());
    await rest(view);
    const before = pixels(view);
    await rest(view);
    const { frames } = pictureOf(view);
    const { goal } = pictureOf(view);
    view.design = sample('curved', { 'wing.droop.tipAngle': 55 }).design;
    await view.updateComplete;
    await nextFrame();
    await nextFrame();
    expect(pictureOf(view).frames).to.equal(frames + 1);
    expect(differing(before, pixels(view))).to.be.greaterThan(60);
    expect(pictureOf(view).goal).to.eql(goal);
    await rest(view);
    const still = pictureOf(view).frames;
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(pictureOf(view).frames).to.equal(still);
  });

  it('shows the ghost translucent behind the design', async () => {
    const view = await show(sample());
    const before = pixels(view);
    view.ghost = { name: 'flat', ...sample('flat') } as SolidView['ghost'];
    await view.updateComplete;
    const beside = pixels(view);
    expect(differing(before, beside)).to.be.greaterThan(60);
    expect(opaque(beside)).to.be.lessThan(1.35 * opaque(before));
    view.ghost = null;
    await view.updateComplete;
    expect(differing(before, pixels(view))).to.equal(0);
  });

  it.each([
    ['deep water', { 'brief.depth': null }],
    ['no stabilizer', { stabilizer: null }],
    ['no strut and fuselage', { strut: null, fuselage: null }],
    ['wings that come to a point', { 'wing.chord': { kind: 'elliptic', root: 0.12 } }],
  ])('draws %s', async (_name, changes) => {
    const view = await show(sample('curved', changes));
    expect(opaque(pixels(view))).to.be.greaterThan(300);
    await expect(view).to.be.accessible();
  });
});

describe('paint', BUSY, () => {
  it('of the lift has a legend in round figures, words, and a table of the report’s own values', async () => {
    const { design, report } = sample();
    const view = await show({ design, report });
    const plain = pixels(view);
    await choosePaint(view, 'lift');
    expect(differing(plain, pixels(view))).to.be.greaterThan(300);
    const legend = [...view.shadowRoot!.querySelectorAll('.legend li')].map((each) =>
      each.textContent!.trim(),
    );
    expect(legend.length).to.be.within(4, 9);
    for (const entry of legend) expect(entry).to.match(/^−?[\d\s]+ to −?[\d\s]+\sN\/m$/);
    view.shadowRoot!.querySelector<HTMLElement>('details summary')!.click();
    await view.updateComplete;
    await expect(view).to.be.accessible();
    const rows = [...view.shadowRoot!.querySelectorAll('tbody tr')].map((row) =>
      [...row.children].map((cell) => cell.textContent!.trim()),
    );
    const { forceZ, width, droop } = report.strips.wing[0]!;
    const root = forceZ / width / Math.cos((droop * Math.PI) / 180);
    expect(Number(rows[0]![2]!.replace(/[^\d.]/g, ''))).to.be.closeTo(root, 0.51);
    expect(labelOf(view)).to.contain('Lift per span: most on the wing');
  });

  it('of the coefficient follows its report, in the user’s units', async () => {
    const view = await show(sample());
    await choosePaint(view, 'coefficient');
    const before = textOf(view);
    view.report = sample('curved', { 'brief.allUpMass': 140 }).report;
    await view.updateComplete;
    expect(textOf(view)).to.not.equal(before);
    await choosePaint(view, 'lift');
    view.units = 'imperial';
    await view.updateComplete;
    expect(textOf(view)).to.contain('lbf/in');
  });

  it('of the layer waits for its study, and shows where it turned', async () => {
    const half = [0, 0.5, 0.95].map((eta) => ({
      eta,
      chord: 0.1,
      cl: 0.3,
      reynolds: 1e6,
      upper: 0.6,
      lower: 0.25,
    }));
    const map: TransitionMap = {
      speed: 9,
      wing: [...half.slice(0, 2), { ...half[2]!, upper: null, lower: null }],
      stabilizer: half,
      laminarShare: { wing: 0.425, stabilizer: 0.425 },
    };
    let answer: (map: TransitionMap) => void = () => {};
    const held = new Promise<TransitionMap>((resolve) => {
      answer = resolve;
    });
    const studies = new Studies({
      ...SILENT,
      loadStudies: async () => ({ transition: await held.then((found) => () => found) }),
    });
    const view = await show(sample(), studies);
    await choosePaint(view, 'transition');
    expect(textOf(view)).to.contain('Solving the layer along the span');
    const plain = pixels(view);
    answer(map);
    await waitUntil(() => view.shadowRoot!.querySelector('.legend'), 'the legend', PATIENT);
    expect(differing(plain, pixels(view))).to.be.greaterThan(300);
    expect(textOf(view)).to.contain('wing 43 % of the area laminar, stabilizer 43 % of the area laminar');
    expect(view.shadowRoot!.querySelector('table')!.textContent!.replace(/\s+/g, ' ')).to.contain(
      '95 % ––60 %25 %',
    );
    await expect(view).to.be.accessible();
  });

  it('is remembered', async () => {
    await choosePaint(await show(sample()), 'coefficient');
    expect(textOf(await show(sample()))).to.contain('Section lift coefficient: most on the wing');
  });
});

describe('the picture', BUSY, () => {
  it('is a PNG of the view, with its legend, large enough for paper', async () => {
    const view = await show(sample());
    await choosePaint(view, 'lift');
    await rest(view);
    const saved = new Promise<{ blob: Blob; name: string }>((resolve) => {
      const make = URL.createObjectURL;
      let blob: Blob;
      URL.createObjectURL = (content) => {
        blob = content as Blob;
        URL.createObjectURL = make;
        return 'about:blank#picture';
      };
      const click = HTMLAnchorElement.prototype.click;
      HTMLAnchorElement.prototype.click = function press() {
        HTMLAnchorElement.prototype.click = click;
        resolve({ blob, name: this.download });
      };
    });
    const { width, height } = pictureOf(view).size;
    button(view, 'Save picture, PNG').click();
    const { blob, name } = await saved;
    expect(name).to.match(/^[\p{L}\d-]+-three-quarter\.png$/u);
    expect(blob.type).to.equal('image/png');
    const head = new Uint8Array(await blob.slice(0, 8).arrayBuffer());
    expect([...head]).to.eql([137, 80, 78, 71, 13, 10, 26, 10]); // ISO/IEC 15948, 5.2
    const image = await createImageBitmap(blob);
    const size = pictureSize({ width, height, legend: [{ label: '', colour: '' }] });
    expect([image.width, image.height]).to.eql([size.width, size.height]);
    expect(image.width).to.be.at.least(1600);
    const copy = document.createElement('canvas');
    [copy.width, copy.height] = [image.width, image.height];
    const pen = copy.getContext('2d')!;
    pen.drawImage(image, 0, 0);
    const shades = (y: number, rows: number) =>
      new Set(new Uint32Array(pen.getImageData(0, y, image.width, rows).data.buffer)).size;
    expect(shades(0, size.view)).to.be.greaterThan(200); // the foil and its light
    expect(shades(size.view, size.height - size.view)).to.be.greaterThan(20); // title and legend
  });
});

describe('graphics that fail', BUSY, () => {
  it('says so when they are taken away, and draws again when they come back', async () => {
    const view = await show(sample());
    const gl = canvasOf(view).getContext('webgl2')!;
    const taking = gl.getExtension('WEBGL_lose_context')!;
    const before = pixels(view);
    taking.loseContext();
    const lost = () => pictureOf(view).shadowRoot!.querySelector('.lost');
    await waitUntil(() => lost(), 'the sentence', PATIENT);
    expect(lost()!.textContent).to.contain('taken the graphics away');
    await expect(view).to.be.accessible();
    await new Promise((resolve) => setTimeout(resolve));
    taking.restoreContext();
    await waitUntil(() => !lost(), 'the graphics', PATIENT);
    await rest(view);
    expect(differing(before, pixels(view))).to.equal(0);
  });

  it('are given back when the view is closed', async () => {
    const view = await show(sample());
    const gl = canvasOf(view).getContext('webgl2')!;
    view.remove();
    expect(gl.isContextLost()).to.equal(true);
  });

  it('are taken anew when the view is put elsewhere', async () => {
    const view = await show(sample());
    const elsewhere = await fixture(html`<div style="width: 500px"></div>`);
    elsewhere.append(view);
    await waitUntil(() => pictureOf(view).frames > 0 && pictureOf(view).size.width > 0, 'a frame', PATIENT);
    expect(opaque(pixels(view))).to.be.greaterThan(500);
  });

  it('are missed with a sentence that points to the flat views', async () => {
    const get = HTMLCanvasElement.prototype.getContext;
    HTMLCanvasElement.prototype.getContext = function none(
      this: HTMLCanvasElement,
      kind: string,
      ...rest: unknown[]
    ) {
      return kind.startsWith('webgl') ? null : Reflect.apply(get, this, [kind, ...rest]);
    } as typeof get;
    try {
      const { design, report } = sample();
      const view = await fixture<SolidView>(
        html`<solid-view .design=${design} .report=${report}></solid-view>`,
      );
      await waitUntil(() => textOf(view).includes('gives no WebGL'), 'the sentence', PATIENT);
      expect(textOf(view)).to.contain('from ahead, from above and from the side show the same foil');
      await expect(view).to.be.accessible();
    } finally {
      HTMLCanvasElement.prototype.getContext = get;
    }
  });
});

describe('the fold round it', BUSY, () => {
  const unfold = async () => {
    const { design, report } = sample();
    const fold = await fixture<SolidFold>(
      html`<solid-fold .design=${design} .report=${report}></solid-fold>`,
    );
    return fold;
  };
  const inside = (fold: SolidFold) => fold.shadowRoot!.querySelector('solid-view');

  it('is closed at first, opens by its heading, and stays as it was left', async () => {
    const fold = await unfold();
    await expect(fold).to.be.accessible();
    expect(inside(fold)).to.equal(null);
    fold.shadowRoot!.querySelector('summary')!.click();
    await waitUntil(() => inside(fold), 'the view', PATIENT);
    await expect(fold).to.be.accessible();
    const again = await unfold();
    await waitUntil(() => inside(again), 'open again', PATIENT);
    again.shadowRoot!.querySelector('summary')!.click();
    await waitUntil(() => !inside(again), 'closed', PATIENT);
    expect(inside(await unfold())).to.equal(null);
  });
});
