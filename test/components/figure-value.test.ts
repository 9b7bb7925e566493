import { expect, fixture, html } from '@open-wc/testing';
import { describe, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/components/figure-value.ts';
import type { FigureValue } from '../../src/components/figure-value.ts';
import '../../web/tokens.css';

const WORKING = {
  formula: 'e = C_L² / (π A C_Di)',
  numbers: [['C_L', '0.313']] as const,
  source: 'definition',
  trust: 'exact',
};

const make = async (properties: Partial<FigureValue>) => {
  const figure = await fixture<FigureValue>(html`<figure-value label="Induced drag"></figure-value>`);
  Object.assign(figure, { quantity: 'force', value: 10.2, ...properties });
  await figure.updateComplete;
  return figure;
};
const read = (figure: FigureValue, part: string) =>
  figure.shadowRoot!.querySelector(part)?.textContent?.replace(/\s+/g, ' ').trim();

describe('figure', () => {
  it('is accessible with name, value and unit', async () => {
    const figure = await make({ note: 'wing and stabilizer' });
    await expect(figure).to.be.accessible();
    expect(read(figure, '.row')).to.equal('Induced drag 10.2 N');
    expect(read(figure, '.note')).to.equal('wing and stabilizer');
    figure.units = 'imperial';
    await figure.updateComplete;
    expect(read(figure, '.value')).to.equal('2.29 lbf'); // 1 lbf = 4.4482216 N by definition
  });

  it('says why there is no value', async () => {
    const figure = await make({ value: null, why: 'no stabilizer' });
    await expect(figure).to.be.accessible();
    expect(read(figure, '.value')).to.equal('no stabilizer');
  });

  it('stands beside the ghost’s with the difference', async () => {
    const figure = await make({ ghost: 9.8 });
    expect(read(figure, '.ghost')).to.equal('ghost 9.80 N (+0.40 N)');
    figure.value = null;
    await figure.updateComplete;
    expect(read(figure, '.ghost')).to.equal('ghost 9.80 N');
    await expect(figure).to.be.accessible();
  });

  it('shows its working when opened, by keyboard too, and works it out only then', async () => {
    let asked = 0;
    const figure = await make({
      working: () => {
        asked++;
        return WORKING;
      },
    });
    expect(asked).to.equal(0);
    const summary = figure.shadowRoot!.querySelector('summary')!;
    summary.focus();
    await userEvent.keyboard('{Enter}');
    await new Promise((done) => setTimeout(done, 50));
    await figure.updateComplete;
    const text = read(figure, '.working')!;
    for (const part of [WORKING.formula, 'C_L', '0.313', 'Source: definition', 'How far to trust it: exact'])
      expect(text).to.contain(part);
    await expect(figure).to.be.accessible();
  });
});
