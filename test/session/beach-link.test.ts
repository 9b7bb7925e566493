import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSetting, settingRange, withSetting } from '../../src/session/beach-link.ts';
import { makeLink, makePairLink, readLink, readPairLink } from '../../src/session/share-link.ts';
import { asDrawn } from '../../src/solver/design/beach-setting.ts';
import { readDesign } from '../../src/solver/design/read.ts';
import { demo } from './designs.ts';
import { HOSTILE_LINKS, PACKED_DOCUMENTS, soundLink } from './hostile.ts';

const design = demo();
const drawn = asDrawn(design);

describe('a setting in the address of a card', () => {
  it('comes back as it went, and the design with it', () => {
    const steps = (least: number, most: number, size: number) =>
      fc.integer({ min: least, max: most }).map((n) => Number((n * size).toFixed(6)));
    const settings = fc.record({
      shim: steps(-5, 5, 0.1),
      strut: steps(-4, 4, 0.005),
      mass: steps(-10, 10, 1),
      water: fc.constantFrom('sea' as const, 'fresh' as const),
      temperature: steps(0, 30, 1),
    });
    fc.assert(
      fc.property(settings, (setting) => {
        const address = withSetting(soundLink(), setting, design);
        const reading = readSetting(address, design);
        expect(reading.problem).toBeNull();
        for (const key of ['shim', 'strut', 'mass', 'temperature'] as const)
          expect(reading.setting[key]).toBeCloseTo(setting[key], 9);
        expect(reading.setting.water).toBe(setting.water);
        expect(readLink(address, readDesign)).toEqual({ ok: true, design });
      }),
      { seed: 12, numRuns: 60 },
    );
  });

  it('is left out where it is as drawn, and takes the place of an earlier one', () => {
    expect(withSetting(soundLink(), drawn, design)).toBe(soundLink());
    const earlier = withSetting(soundLink(), { ...drawn, shim: 0.3, strut: -0.01 }, design);
    expect(earlier).toBe(`${soundLink()};shim=0.3;strut=-10`);
    expect(withSetting(earlier, { ...drawn, water: 'fresh' }, design)).toBe(`${soundLink()};water=fresh`);
  });

  it.each([
    ['shim=0.6', 'found “shim=0.6”, allowed -0.5 to 0.5'],
    ['shim=', 'allowed -0.5 to 0.5'],
    ['shim=NaN', 'allowed -0.5 to 0.5'],
    ['strut=1e9', 'allowed -20 to 20'],
    ['mass=--1', 'allowed -10 to 10'],
    ['temperature=-1', 'allowed 0 to'],
    ['water=beer', 'allowed sea or fresh'],
    ['__proto__=1', 'allowed shim, strut, mass, temperature or water'],
    ['<script>', 'allowed shim, strut'],
    [`shim=0.1${';mass=1'.repeat(100)}`, 'up to 200 characters'],
  ])('that is no good (%s) leaves all as drawn and says why', (told, message) => {
    const { setting, problem } = readSetting(`${soundLink()};${told}`, design);
    expect(setting).toEqual(drawn);
    expect(problem).toMatch(
      /^The setting in the link cannot be read: [^\n]{10,300}\. The card starts as drawn\.$/,
    );
    expect(problem).toContain(message);
  });

  it('ends where the document’s own ranges end', () => {
    const light = { ...design, brief: { ...design.brief, allUpMass: 24 } };
    expect(settingRange('mass', light)).toEqual({ min: -4, max: 10 });
    const icy = { ...design, brief: { ...design.brief, water: { ...design.brief.water, temperature: 3 } } };
    expect(settingRange('temperature', icy)).toEqual({ min: 0, max: 18 });
  });
});

describe('a link to a rider page', () => {
  const second = { ...demo(), name: 'The other' };
  const made = makePairLink([design, second], 'https://foils.example/rider.html?a=b#old');
  const link = made.ok ? made.link : '';
  const sound = soundLink().split('.').at(-1)!;

  it('holds two designs whole, in an address that needs no escapes', () => {
    expect(link).toMatch(/^https:\/\/foils\.example\/rider\.html\?a=b#rider\.1\.[\w-]+\.[\w-]+$/);
    expect(new URL(link).href).toBe(link);
    expect(readPairLink(link, readDesign)).toEqual({ ok: true, designs: [design, second] });
  });

  it.each([
    '',
    '#rider',
    '#rider.1',
    '#rider.1.',
    '#rider.2.a.b',
    '#rider.x.a.b',
    '#rider.-1.a.b',
    link.slice(0, -30),
  ])('that is broken (%s) is refused in one line', (text) => {
    expect(readPairLink(text, readDesign)).toMatchObject({
      ok: false,
      message: expect.stringMatching(/^The link cannot be opened: [^\n]{5,300}$/),
    });
  });

  // What is hostile in one design's link is so in either place of two.
  const packings = [...HOSTILE_LINKS, ...PACKED_DOCUMENTS].map(({ what, text }) => {
    const [, version = '', data = ''] = /#design\.([^.]*)\.?(.*)$/s.exec(text) ?? [];
    return { what, version, data };
  });

  it.each(packings)('refuses $what in either place', ({ version, data }) => {
    for (const text of [`#rider.${version}.${data}.${sound}`, `#rider.${version}.${sound}.${data}`]) {
      const reading = readPairLink(text, readDesign);
      expect(reading.ok).toBe(false);
      if (!reading.ok) expect(reading.message).toMatch(/^The link cannot be opened: [^\n]{5,330}$/);
    }
    expect(({} as { isOwned?: boolean }).isOwned).toBeUndefined();
  });

  it('is refused where one design was sent', () => {
    const single = makeLink(design, 'https://foils.example/rider.html');
    expect(readPairLink(single.ok ? single.link : '', readDesign).ok).toBe(false);
  });
});
