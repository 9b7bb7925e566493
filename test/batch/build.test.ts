import { describe, expect, it, vi } from 'vitest';
import { runCommand } from '../../src/batch/batch.ts';
import { readDesign } from '../../src/solver/design/read.ts';
import { builtDesign } from '../../src/solver/studies/built-shape.ts';
import { fingerprint } from '../../src/workshop/fingerprint.ts';
import { memoryFiles } from './memory-files.ts';

vi.setConfig({ testTimeout: 60_000 });

async function run(line: string) {
  const files = memoryFiles();
  const { code, output, error } = await runCommand(`build ${line}`.split(' '), files);
  return { code, error, names: output.trim().split('\n').filter(Boolean), bytes: files.bytes, output };
}

async function made(line: string) {
  const answer = await run(line);
  expect([answer.code, answer.error]).toEqual([0, '']);
  const text = (end: string) => {
    const name = answer.names.find((each) => each.endsWith(end))!;
    return new TextDecoder().decode(answer.bytes.get(`bench/${name}`));
  };
  return { ...answer, text };
}

function drawn(name: string) {
  const reading = readDesign(memoryFiles().read(name));
  if (!reading.ok) throw new Error(reading.message);
  return reading.design;
}

describe('build', () => {
  it('writes what it names into the folder, nothing else', async () => {
    const { names, bytes } = await made('curved-race.json --kind csv --out bench');
    expect(names.map((name) => name.replace(/^.*-(wing|stab)/, '$1'))).toEqual([
      'wing-stations.csv',
      'stabilizer-stations.csv',
    ]);
    expect([...bytes.keys()]).toEqual(names.map((name) => `bench/${name}`));
  });

  it('stl without a part holds wing and stabilizer only; moulds are eight', async () => {
    const whole = await made('flat-race.json --kind stl --out bench');
    expect(whole.names.map((name) => name.split('-').pop())).toEqual(['wing.stl', 'stabilizer.stl']);
    const moulds = await made('flat-race.json --kind=stl --part mould --parting upright --out=bench');
    expect(moulds.names).toHaveLength(8);
  });

  it('pdf holds sheet and templates on the paper asked for', async () => {
    const { names } = await made('flat-race.json --kind pdf --paper letter --out bench');
    expect(names.map((name) => name.replace(/^.*-(sheet|templates)/, '$1'))).toEqual([
      'sheet.pdf',
      'templates-letter.pdf',
    ]);
  });

  it('--built gives the shape that flies as drawn, under the fingerprint of the document', async () => {
    const design = drawn('curved-race.json');
    const asDrawn = await made('curved-race.json --kind csv --part wing --out bench');
    const built = await made('curved-race.json --kind csv --part wing --built --out bench');
    const droopAtTip = (text: string) => Number(text.trim().split('\r\n').at(-1)!.split(',').at(-1));
    const { droop } = builtDesign(design).wing;
    expect(droop.kind).toBe('points');
    const wanted = droop.kind === 'points' ? droop.at.at(-1)![1] : Number.NaN;
    expect(droopAtTip(built.text('.csv'))).toBeCloseTo(wanted, 2);
    expect(droopAtTip(built.text('.csv'))).toBeGreaterThan(droopAtTip(asDrawn.text('.csv'))); // lift bends it up
    expect(built.names[0]).toContain('-to-build-');
    const svg = await made('curved-race.json --kind svg --part strut --built --out bench');
    expect(svg.text('.svg')).toContain(`Fingerprint ${fingerprint(design)}`);
    expect(svg.text('.svg')).toContain('shape to build');
  });

  it.each([
    ['flat-race.json --out bench', '--kind: found none, allowed csv, svg, dxf, stl, pdf'],
    ['flat-race.json --kind obj --out bench', '--kind: found "obj", allowed csv, svg, dxf, stl, pdf'],
    ['flat-race.json --kind csv', '--out: found none, allowed the folder for the files'],
    ['flat-race.json --kind csv --part keel --out bench', '--part: found "keel", allowed wing, stabilizer'],
    ['flat-race.json --kind csv --part mould --out bench', 'part: found mould, of which there is no csv'],
    ['flat-race.json --kind pdf --paper a5 --out bench', '--paper: found "a5", allowed a4, a3, letter'],
    ['flat-race.json --kind stl --side left --out bench', '--side: found "left", allowed whole, halves'],
    ['flat-race.json --kind stl --parting bent --out bench', '--parting: found "bent", allowed fitted'],
    ['flat-race.json --kind csv --out nowhere', '--out: found "nowhere", which cannot be written'],
    ['missing.json --kind csv --out bench', 'missing.json: cannot be read'],
    ['--kind csv --out bench', 'build: found no FILE, allowed build FILE'],
  ])('%s is refused in one line', async (line, message) => {
    const { code, output, error, bytes } = await run(line);
    expect([code, output, bytes.size]).toEqual([2, '', 0]);
    expect(error).toContain(message);
    expect(error).not.toContain('\n');
  });
});
