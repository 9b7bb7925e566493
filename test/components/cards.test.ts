import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { afterEach, beforeEach, describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/components/cards/beach-card.ts';
import type { BeachCard } from '../../src/components/cards/beach-card.ts';
import '../../src/components/cards/cards-menu.ts';
import type { CardsMenu } from '../../src/components/cards/cards-menu.ts';
import '../../src/components/cards/rider-page.ts';
import type { RiderPage } from '../../src/components/cards/rider-page.ts';
import { setDecimalMark } from '../../src/session/number-format.ts';
import { makeLink, makePairLink, readLink, readPairLink } from '../../src/session/share-link.ts';
import { Studies } from '../../src/session/studies.ts';
import { STUDIES } from '../../src/session/study-registry.ts';
import type { AnyStudies } from '../../src/session/study-server.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { readDesign } from '../../src/solver/design/read.ts';
import { DEMOS } from '../../web/demos.ts';
import { openSession } from '../support/open-session.ts';

const LONG = { timeout: 60_000 };
const [curved, flat, downwind] = DEMOS.map(({ design }) => design) as [Design, Design, Design];
const address = window.location.href;

const none = () => {
  throw new Error('none here');
};
const studiesOf = (registry: AnyStudies) =>
  new Studies({ makeWorker: none, loadStudies: async () => registry });
const onPage = studiesOf({ beach: STUDIES.beach, beachTable: STUDIES.beachTable, rider: STUDIES.rider });
const never = () => new Studies({ makeWorker: none, loadStudies: () => new Promise(() => {}) });

function fragmentOf(design: Design): string {
  const made = makeLink(design, '');
  return made.ok ? made.link : '';
}

async function openBeach(fragment = fragmentOf(curved), studies = onPage): Promise<BeachCard> {
  const card = await fixture<BeachCard>(
    html`<beach-card .fragment=${fragment} .read=${readDesign} .studies=${studies}></beach-card>`,
  );
  return card;
}

const text = (root: ParentNode) => root.textContent!.replaceAll(/\s+/g, ' ');
const rest = (card: BeachCard) => card.renderRoot.querySelector('beach-rest')!.renderRoot;
const strip = (card: BeachCard) =>
  [...card.renderRoot.querySelectorAll('.strip strong')].map((each) => each.textContent!);
const hasFigures = (card: BeachCard) =>
  waitUntil(() => strip(card).length === 3, 'figures', { timeout: 50_000 });
const settled = (card: BeachCard) =>
  waitUntil(() => strip(card).length === 3 && !card.renderRoot.querySelector('[data-late]'), 'settled', {
    timeout: 50_000,
  });

/** The two buttons of a stepper and what it shows. */
function stepper(card: BeachCard, label: string) {
  const found = [...card.renderRoot.querySelectorAll('setting-stepper')].find((each) =>
    each.label.startsWith(label),
  )!;
  const [less, more] = [...found.shadowRoot!.querySelectorAll('button')] as [
    HTMLButtonElement,
    HTMLButtonElement,
  ];
  return { less, more, words: () => found.shadowRoot!.querySelector('output')!.textContent };
}
const button = (root: ParentNode, words: string) =>
  [...root.querySelectorAll('button')].find((each) => each.textContent!.includes(words))!;

beforeEach(() => localStorage.clear());
afterEach(() => {
  window.history.replaceState(null, '', address);
  delete document.documentElement.dataset.look;
});

describe('beach-card', () => {
  it(
    'is accessible with every figure there, table and workings open; nothing on it can be typed into',
    LONG,
    async () => {
      const card = await openBeach();
      await hasFigures(card);
      await waitUntil(() => rest(card).querySelectorAll('.single tbody tr').length > 10, 'table', {
        timeout: 50_000,
      });
      await userEvent.click(button(rest(card), 'Table of single steps'));
      await userEvent.click(rest(card).querySelector('summary')!);
      await expect(card).to.be.accessible();
      expect(card.renderRoot.querySelectorAll('input, textarea, select, [contenteditable]').length).to.equal(
        0,
      );
      expect(text(card.renderRoot)).to.contain('no approval of strength or safety');
    },
  );

  it(
    'says how far the feet move for a step of the strut, one to one, and keeps the setting in the address',
    LONG,
    async () => {
      const card = await openBeach();
      await hasFigures(card);
      expect(strip(card)[0]).to.equal('0\u00a0mm');
      const { more, less, words } = stepper(card, 'Strut');
      expect(words()).to.equal('as drawn');
      await userEvent.click(more);
      await userEvent.click(more);
      await settled(card);
      expect(words()).to.equal('10\u00a0mm aft');
      expect(strip(card)[0]).to.equal('10\u00a0mm');
      expect(strip(card)[2]).to.equal('0.0\u00a0%');
      expect(window.location.hash.endsWith(';strut=10')).to.equal(true);
      for (let k = 0; k < 3; k++) await userEvent.click(less);
      await settled(card);
      expect(text(card.renderRoot.querySelector('.strip')!)).to.match(/^\s*Feet move 5\u00a0?.?mm.?forward/);
      const again = await openBeach(window.location.hash);
      await settled(again);
      expect(stepper(again, 'Strut').words()).to.equal('5\u00a0mm forward');
      expect(strip(again)).to.deep.equal(strip(card));
    },
  );

  it('writes a decimal comma where that is chosen, also where words end at a comma', LONG, async () => {
    setDecimalMark(',');
    try {
      const card = await openBeach();
      await hasFigures(card);
      await waitUntil(() => rest(card).querySelectorAll('.single tbody tr').length > 10, 'table', {
        timeout: 50_000,
      });
      const rows = [...rest(card).querySelectorAll('.single tbody th')].map(text);
      expect(rows).to.include('Shim +0,5° nose up').and.to.include('Rider +10 kg');
      expect(strip(card)[1]).to.match(/^\d,\d.kn$/);
    } finally {
      setDecimalMark('.');
    }
  });

  it(
    'answers to the keyboard, stops at its ends, goes back to as drawn and takes that back',
    LONG,
    async () => {
      const card = await openBeach();
      await hasFigures(card);
      const { more, words } = stepper(card, 'Shim');
      more.focus();
      for (let k = 0; k < 7; k++) await userEvent.keyboard('{Enter}');
      expect(words()).to.equal('+0.5° nose up');
      expect(more.getAttribute('aria-disabled')).to.equal('true');
      expect(more.getRootNode()).to.have.property('activeElement', more); // the focus stays
      await settled(card);
      const shimmed = strip(card);
      expect(Number.parseFloat(shimmed[0]!)).to.be.greaterThan(10);
      button(card.renderRoot, 'Everything as drawn').focus();
      await userEvent.keyboard('{Enter}');
      await settled(card);
      expect(strip(card)[0]).to.equal('0\u00a0mm');
      expect(window.location.hash).to.not.contain(';');
      await userEvent.click(button(card.renderRoot, 'Take that back'));
      await settled(card);
      expect(strip(card)).to.deep.equal(shimmed);
    },
  );

  it('goes on while a button is held, and the end of the hold is no step of its own', LONG, async () => {
    const card = await openBeach(fragmentOf(curved), never());
    const { more, words } = stepper(card, 'Rider');
    const send = (type: string) =>
      more.dispatchEvent(new PointerEvent(type, { bubbles: true, composed: true }));
    send('pointerdown');
    await waitUntil(() => words() === '+3\u00a0kg, 98\u00a0kg in all', 'three steps', { timeout: 5000 });
    send('pointerup');
    more.dispatchEvent(new MouseEvent('click', { detail: 1, bubbles: true, composed: true }));
    await card.updateComplete;
    expect(words()).to.equal('+3\u00a0kg, 98\u00a0kg in all');
  });

  it('changes the water, which carries less, and says the change to a screen reader', LONG, async () => {
    const card = await openBeach();
    await hasFigures(card);
    const fresh = button(card.renderRoot, 'Fresh water');
    await userEvent.click(fresh);
    expect(fresh.getAttribute('aria-pressed')).to.equal('true');
    await settled(card);
    const status = card.renderRoot.querySelector('[role=status]:not(.wait)')!;
    await waitUntil(() => status.textContent!.includes(strip(card)[1]!), 'said', { timeout: 3000 });
    expect(window.location.hash.endsWith(';water=fresh')).to.equal(true);
  });

  it('has no shim without a stabilizer and no track without a strut', async () => {
    const card = await openBeach(fragmentOf({ ...curved, stabilizer: null, strut: null }), never());
    expect(text(card.renderRoot)).to.contain('No stabilizer, no shim.').and.to.contain('No strut, no track.');
    expect(card.renderRoot.querySelectorAll('setting-stepper').length).to.equal(2);
  });

  it('is black on white unless asked otherwise, and remembers', async () => {
    const card = await openBeach(fragmentOf(curved), never());
    expect(document.documentElement.dataset.look).to.equal('sun');
    await userEvent.click(button(card.renderRoot, 'White on black'));
    await waitUntil(() => document.documentElement.dataset.look === 'night', 'night', { timeout: 10_000 });
    const again = await openBeach(fragmentOf(curved), never());
    expect(button(again.renderRoot, 'Black on white')).to.not.equal(undefined);
  });

  for (const [what, fragment, message] of [
    ['nothing', '', 'There is no design in this address'],
    ['a damaged link', '#design.1.abc', 'The link cannot be opened: it is cut short or damaged.'],
    ['a newer link', '#design.9.abc', 'a newer Downcurve made it'],
  ] as const)
    it(`gives one message and the way back for ${what}`, async () => {
      const card = await openBeach(fragment, never());
      expect(card.renderRoot.querySelectorAll('.trouble').length).to.equal(1);
      expect(text(card.renderRoot.querySelector('[role=alert]')!)).to.contain(message);
      expect(card.renderRoot.querySelector('a')!.getAttribute('href')).to.equal('./');
      await expect(card).to.be.accessible();
    });

  it('starts as drawn where the setting is no good, and says so', async () => {
    const card = await openBeach(`${fragmentOf(curved)};shim=7`, never());
    expect(text(card.renderRoot.querySelector('[role=alert]')!)).to.contain('“shim=7”, allowed -0.5 to 0.5');
    expect(stepper(card, 'Shim').words()).to.equal('as drawn');
  });
});

async function openRider(fragment: string, studies = onPage): Promise<RiderPage> {
  return fixture<RiderPage>(
    html`<rider-page .fragment=${fragment} .read=${readDesign} .studies=${studies}></rider-page>`,
  );
}

function pairOf(one: Design, other: Design): string {
  const made = makePairLink([one, other], '');
  return made.ok ? made.link : '';
}

describe('rider-page', () => {
  it('says five things with figures and marks, draws both, and is accessible', LONG, async () => {
    const page = await openRider(pairOf(curved, flat));
    await waitUntil(() => page.renderRoot.querySelectorAll('.five li').length === 5, 'five', {
      timeout: 50_000,
    });
    await expect(page).to.be.accessible();
    const said = [...page.renderRoot.querySelectorAll('.five li')].map(text);
    expect(said[0]).to.match(/lifts off [\d.]+.kn earlier: at 9\.\d.kn, the second at 9\.\d.kn\. estimated/);
    expect(said[1]).to.match(
      /steadier: hold index 3\.\d+, the second 0\.00\. estimated ?Turned, it rolls out of .* solved/,
    );
    expect(said[2]).to.match(
      /At 28.kn it is (dearer|cheaper) by [\d.]+.N, [\d.]+.%: 14\d\.\d.N, .* estimated/,
    );
    expect(said[3]).to.match(
      /feet stand \d+.mm further aft: \d+.mm aft of the strut, on the second \d+.mm aft .* solved/,
    );
    expect(said[4]).to.match(/no heel brings a tip of either to the surface\. solved/);
    const picture = page.renderRoot.querySelector('rider-picture')!;
    expect(picture.shadowRoot!.querySelectorAll('.wing, .second').length).to.equal(3);
    expect(text(page.renderRoot))
      .to.contain(curved.name)
      .and.to.contain(flat.name)
      .and.to.contain('no approval');
    expect(page.renderRoot.querySelectorAll('input, textarea, select').length).to.equal(0);
  });

  it('asks both with the brief of the first, says so, and why one cannot run there', LONG, async () => {
    const short = { ...downwind, strut: { ...downwind.strut!, length: 0.5 } };
    const page = await openRider(pairOf(curved, short));
    await waitUntil(() => page.renderRoot.querySelectorAll('.five li').length === 5, 'five', {
      timeout: 50_000,
    });
    expect(text(page.renderRoot)).to.contain('Both asked alike, with the brief of the first: 95');
    expect(text(page.renderRoot.querySelector('.trouble')!)).to.contain(
      "allowed up to the strut's length, 0.5 m",
    );
    expect(text(page.renderRoot.querySelector('.five')!)).to.contain(
      'There is no balance at cruise of the second.',
    );
  });

  for (const [what, fragment] of [
    ['nothing', ''],
    ['one design', '#rider.1.abc'],
    ['a newer link', '#rider.2.abc.abc'],
    ['half a link', pairOf(curved, flat).slice(0, -20)],
  ] as const)
    it(`gives one message and the way back for ${what}`, async () => {
      const page = await openRider(fragment, never());
      expect(page.renderRoot.querySelectorAll('[role=alert]').length).to.equal(1);
      expect(page.renderRoot.querySelector('a')!.getAttribute('href')).to.equal('./');
      await expect(page).to.be.accessible();
    });
});

describe('cards-menu', () => {
  async function open() {
    const session = await openSession({ design: curved, isIdle: true });
    const menu = await fixture<CardsMenu>(
      html`<cards-menu .session=${session} .demos=${DEMOS}></cards-menu>`,
    );
    return { menu, session };
  }
  const links = (menu: CardsMenu) => [...menu.renderRoot.querySelectorAll<HTMLAnchorElement>('dialog a')];

  it('leads to the card of the design as it is when the link is used', async () => {
    const { menu, session } = await open();
    await expect(menu).to.be.accessible();
    session.edit({ changes: [{ path: 'name', value: 'Changed' }], label: 'name', phase: 'settled' });
    const link = menu.renderRoot.querySelector<HTMLAnchorElement>('a')!;
    link.focus();
    expect(new URL(link.href).pathname.endsWith('/beach.html')).to.equal(true);
    expect(readLink(link.href, readDesign)).to.deep.equal({ ok: true, design: session.design });
  });

  it('offers kept designs, demos and a file to stand against the open one', async () => {
    const { menu, session } = await open();
    await session.kept.keep(downwind, 'On the shelf');
    await userEvent.click(button(menu.renderRoot, 'Rider page'));
    await waitUntil(() => menu.renderRoot.querySelector<HTMLDialogElement>('dialog')?.open, 'open');
    await expect(menu).to.be.accessible();
    expect(links(menu).map(({ textContent }) => textContent)).to.deep.equal([
      'On the shelf',
      ...DEMOS.map(({ label }) => label),
    ]);
    const reading = readPairLink(links(menu)[2]!.href, readDesign);
    expect(reading).to.deep.equal({ ok: true, designs: [curved, flat] });
    expect(new URL(links(menu)[2]!.href).pathname.endsWith('/rider.html')).to.equal(true);
    const input = menu.renderRoot.querySelector<HTMLInputElement>('input[type=file]')!;
    await userEvent.upload(input, new File(['{'], 'broken.json'));
    await waitUntil(() => menu.renderRoot.querySelector('.trouble'), 'message');
    expect(text(menu.renderRoot.querySelector('.trouble')!)).to.contain('broken.json: not a JSON document');
    await userEvent.keyboard('{Escape}');
    await waitUntil(() => menu.renderRoot.querySelector('dialog') === null, 'closed');
  });
});
