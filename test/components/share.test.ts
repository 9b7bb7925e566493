import { expect, fixture, html, waitUntil } from '@open-wc/testing';
import { afterEach, beforeEach, describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/components/app-shell.ts';
import type { AppShell } from '../../src/components/app-shell.ts';
import { makeLink, readLink } from '../../src/session/share-link.ts';
import { readDesign, writeDesign } from '../../src/solver/design/read.ts';
import { DEMOS } from '../../web/demos.ts';
import { openSession } from '../support/open-session.ts';

const [first, second] = [DEMOS[0]!.design, DEMOS[1]!.design];

/** The page without figures: what is tested here needs none. */
async function openPage() {
  const session = await openSession({ design: first, isIdle: true });
  const page = await fixture<AppShell>(html`<app-shell .demos=${DEMOS} .session=${session}></app-shell>`);
  return { page, session };
}

const shareButton = (page: AppShell) =>
  page.querySelector('page-header')!.shadowRoot!.querySelector('share-button')!;
const inside = <E extends Element>(page: AppShell, selector: string) =>
  shareButton(page).shadowRoot!.querySelector<E>(selector);

/** Puts a clipboard of our own in place of the browser's. */
function useClipboard(writeText: (text: string) => Promise<void>): void {
  Object.defineProperty(navigator, 'clipboard', { value: { writeText }, configurable: true });
}

afterEach(() => {
  Reflect.deleteProperty(navigator, 'clipboard');
});
beforeEach(() => {
  localStorage.clear();
});

describe('copy a link', () => {
  it('copies a link that opens the design as it is, says so politely, and is accessible', async () => {
    let copied = '';
    useClipboard(async (text) => {
      copied = text;
    });
    const { page } = await openPage();
    await expect(shareButton(page)).to.be.accessible();
    inside<HTMLButtonElement>(page, 'button')!.focus();
    await userEvent.keyboard('{Enter}');
    await waitUntil(() => inside(page, '[role=status]')!.textContent !== '', 'the announcement');
    expect(inside(page, '[role=status]')!.textContent).to.contain('Link copied');
    expect(inside(page, 'button')!.textContent).to.equal('Link copied');
    expect(copied.startsWith(window.location.href.split('#')[0]!)).to.equal(true);
    expect(readLink(copied, readDesign)).to.deep.equal({ ok: true, design: first });
  });

  it('shows the link marked where the browser does not let it be copied', async () => {
    useClipboard(() => Promise.reject(new DOMException('', 'NotAllowedError')));
    const { page } = await openPage();
    const button = inside<HTMLButtonElement>(page, 'button')!;
    button.focus();
    await userEvent.keyboard('{Enter}');
    await waitUntil(() => inside<HTMLDialogElement>(page, 'dialog')?.open, 'the link by hand');
    await expect(shareButton(page)).to.be.accessible();
    const input = inside<HTMLInputElement>(page, 'input')!;
    expect(shareButton(page).shadowRoot!.activeElement).to.equal(input);
    expect([input.selectionStart, input.selectionEnd]).to.deep.equal([0, input.value.length]);
    expect(readLink(input.value, readDesign).ok).to.equal(true);
    await userEvent.keyboard('{Escape}');
    await waitUntil(() => inside(page, 'dialog') === null, 'closed');
    expect(shareButton(page).shadowRoot!.activeElement).to.equal(button);
  });
});

/** What a hand holds over the page or a clipboard holds. */
function parcel(text: string | null, ...files: File[]): DataTransfer {
  const data = new DataTransfer();
  if (text !== null) data.setData('text/plain', text);
  for (const file of files) data.items.add(file);
  return data;
}

function drag(type: string, dataTransfer: DataTransfer, target: EventTarget = document.body): DragEvent {
  const event = new DragEvent(type, { dataTransfer, bubbles: true, composed: true, cancelable: true });
  target.dispatchEvent(event);
  return event;
}

function paste(clipboardData: DataTransfer, target: EventTarget = document.body): ClipboardEvent {
  const event = new ClipboardEvent('paste', {
    clipboardData,
    bubbles: true,
    composed: true,
    cancelable: true,
  });
  target.dispatchEvent(event);
  return event;
}

const nameField = (page: AppShell) =>
  page
    .querySelector('page-header')!
    .shadowRoot!.querySelector('text-field')!
    .shadowRoot!.querySelector('input')!;

describe('drop and paste', () => {
  it('marks the page while a file is held over it, opens the file, and undo takes it back', async () => {
    const { page, session } = await openPage();
    const held = parcel(null, new File([writeDesign(second)], 'sent.json'));
    expect(drag('dragover', held).defaultPrevented).to.equal(true);
    await page.updateComplete;
    expect(page.querySelector('.drop-mark')!.textContent).to.contain('Drop a design to open it');
    await expect(page.querySelector('.drop-mark')!).to.be.accessible();
    drag('dragleave', held);
    await page.updateComplete;
    expect(page.querySelector('.drop-mark')).to.equal(null);
    drag('dragover', held);
    drag('drop', held);
    await waitUntil(() => session.design.name === second.name, 'opened');
    await page.updateComplete;
    expect(page.querySelector('.drop-mark')).to.equal(null);
    session.store.undo();
    expect(session.design).to.deep.equal(first);
  });

  it('opens a dropped text, but leaves text over a field to the field and the page’s own to the page', async () => {
    const { page, session } = await openPage();
    const held = parcel(writeDesign(second));
    expect(drag('dragover', held, nameField(page)).defaultPrevented).to.equal(false);
    expect(drag('drop', held, nameField(page)).defaultPrevented).to.equal(false);
    drag('dragstart', held);
    expect(drag('drop', held).defaultPrevented).to.equal(false);
    drag('dragend', held);
    expect(session.design).to.equal(first);
    drag('drop', held);
    expect(session.design).to.deep.equal(second);
  });

  it('takes one file at a time', async () => {
    const { page, session } = await openPage();
    drag('drop', parcel(null, new File(['{}'], 'a.json'), new File(['{}'], 'b.json')));
    await page.updateComplete;
    expect(page.querySelector('.notice.trouble')!.textContent).to.contain('2 files were dropped: open one');
    expect(session.design).to.equal(first);
  });

  it('opens what is pasted outside text fields, and says what it found in anything else', async () => {
    const { page, session } = await openPage();
    const made = makeLink(second, 'https://foils.example/');
    const link = made.ok ? made.link : '';
    expect(paste(parcel(link), nameField(page)).defaultPrevented).to.equal(false);
    expect(session.design).to.equal(first);
    paste(parcel('a shopping list'));
    await page.updateComplete;
    expect(page.querySelector('.notice.trouble')!.textContent).to.contain('"a shopping list", is neither');
    expect(session.design).to.equal(first);
    paste(parcel(link));
    expect(session.design).to.deep.equal(second);
    await page.updateComplete;
    expect(page.querySelectorAll('.notice.trouble').length).to.equal(0);
  });

  it('opens a link put into the address, and takes it off again', async () => {
    const { session } = await openPage();
    const made = makeLink(second, window.location.href);
    window.location.hash = new URL(made.ok ? made.link : '').hash;
    await waitUntil(() => session.design.name === second.name, 'opened');
    expect(window.location.hash).to.equal('');
  });
});
