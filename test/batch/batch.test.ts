import { describe, expect, it, vi } from 'vitest';
import { runBatch } from '../../src/batch/batch.ts';
import { readDesign } from '../../src/solver/design/read.ts';
import type { Report } from '../../src/solver/report.ts';
import { solve } from '../../src/solver/solve.ts';
import { BROKEN } from '../designs/broken.ts';
import { changed, goodDocument } from '../designs/change.ts';
import { memoryFiles } from './memory-files.ts';

vi.setConfig({ testTimeout: 60_000 });

const run = (line: string, files = memoryFiles()) => runBatch(line.split(' '), files);

/** The report that a line prints; few strips, as the numbers are not the matter here. */
function report(line: string): Report {
  const { code, output, error } = run(`${line} --strips 8`);
  expect([code, error]).toEqual([0, '']);
  return JSON.parse(output);
}

function designOf(name: string) {
  const reading = readDesign(memoryFiles().read(name));
  if (!reading.ok) throw new Error(reading.message);
  return reading.design;
}

describe('solve', () => {
  it('prints the report of the solver as one JSON object', () => {
    const { code, output, error } = run('solve curved-race.json');
    expect([code, error]).toEqual([0, '']);
    expect(JSON.parse(output)).toEqual(JSON.parse(JSON.stringify(solve(designOf('curved-race.json')))));
  });

  it('has every key of the contract, in its order', () => {
    const keys = (value: object, wanted: string) => {
      const names = wanted.split(' ');
      expect(Object.keys(value).filter((key) => names.includes(key))).toEqual(names);
    };
    const found = report('solve curved-race.json');
    const surface =
      'projectedArea unrolledArea span unrolledLength aspectRatio meanChord tipDrop effectiveDroop';
    const nine = 'CYbeta Clbeta Cnbeta CYp Clp Cnp CYr Clr Cnr';
    keys(found, 'condition geometry lift inducedDrag ledger strips stability pitch');
    keys(found.condition, 'speed density alpha depth');
    keys(found.geometry.wing, surface);
    keys(found.geometry.stabilizer!, `${surface} volume sidewaysVolume`);
    keys(found.lift, 'total wing stabilizer CL CLalpha');
    keys(found.inducedDrag, 'farField nearField CDi spanEfficiency leastFactor');
    keys(
      found.ledger,
      'normalForce verticalLift leanedAway pushedSideways flatLift metAtSmallerAngle lostLift lostFraction deepWater sameLift',
    );
    keys(found.ledger.deepWater, 'lostFraction');
    keys(found.ledger.sameLift, 'unrolled sameSpan');
    keys(found.ledger.sameLift.unrolled, 'extraAlpha extraInducedDrag');
    keys(found.strips.wing[0]!, 'eta y z chord circulation cl normalForce');
    keys(found.strips.stabilizer[0]!, 'eta y z chord circulation cl normalForce');
    keys(found.stability, 'foil craft neutralPoint staticMargin holdIndex neutralDroop');
    keys(found.stability.foil, nine);
    keys(found.stability.craft, nine);
    keys(found.pitch, 'momentAboutBalance trimIncidence trimStance downwashSlope');
  });

  it('carries (1 - u) m g at cruise speed and the depth of the brief, if nothing else is said', () => {
    const { condition, lift } = report('solve curved-race.json');
    expect(condition).toMatchObject({ speed: 9.5, depth: 0.55 });
    expect(lift.total).toBeCloseTo(0.9 * 92 * 9.80665, 6); // standard gravity
  });

  it.each<[string, (found: Report) => unknown, unknown]>([
    ['--speed 6', (found) => found.condition.speed, 6],
    ['--speed=6.5', (found) => found.condition.speed, 6.5],
    ['--alpha -2', (found) => found.condition.alpha, -2],
    ['--alpha=-2.5', (found) => found.condition.alpha, -2.5],
    ['--alpha 1e0', (found) => found.condition.alpha, 1],
    ['--lift 500', (found) => found.lift.total, 500],
    ['--lift=-50', (found) => found.lift.total, -50],
    ['--depth 0.3', (found) => found.condition.depth, 0.3],
    ['--deep', (found) => found.condition.depth, null],
    ['--stabilizer-strips 6', (found) => found.strips.stabilizer.length, 6],
    ['--rows 3', (found) => found.strips.wing.length > 0, true],
    ['--sections thin', (found) => found.strips.wing.length > 0, true],
  ])('takes %s', (words, figure, expected) => {
    const found = figure(report(`solve curved-race.json ${words}`));
    if (typeof expected === 'number') expect(found).toBeCloseTo(expected, 9);
    else expect(found).toBe(expected);
  });

  it('takes options before the file', () => {
    expect(report('solve --alpha -1 --deep flat-race.json').condition).toMatchObject({
      alpha: -1,
      depth: null,
    });
  });

  it('answers with null for parts that are not there', () => {
    const found = report('solve formula-deep.json');
    expect([found.geometry.stabilizer, found.condition.depth, found.pitch.downwashSlope]).toEqual([
      null,
      null,
      null,
    ]);
    expect(found.strips.stabilizer).toEqual([]);
  });
});

describe('sweep', () => {
  const table = (line: string) => {
    const { code, output, error } = run(`${line} --strips 8`);
    expect([code, error]).toEqual([0, '']);
    const [head, ...lines] = output.trimEnd().split('\n');
    const columns = head!.split(',');
    return {
      columns,
      rows: lines.map((text) => Object.fromEntries(text.split(',').map((cell, k) => [columns[k]!, cell]))),
    };
  };

  it('gives a row a case, varied paths first, both ends included', () => {
    const { columns, rows } = table('sweep curved-race.json --vary wing.droop.tipAngle=0:40:3');
    expect(columns.slice(0, 2)).toEqual(['wing.droop.tipAngle', 'condition.speed']);
    expect(rows.map((row) => row['wing.droop.tipAngle'])).toEqual(['0', '20', '40']);
    expect(columns).toEqual(
      expect.arrayContaining([
        'inducedDrag.farField',
        'stability.foil.Clr',
        'ledger.sameLift.unrolled.extraAlpha',
      ]),
    );
  });

  it('gives the figures that solve gives', () => {
    const { rows } = table('sweep curved-race.json --vary stabilizer.incidence=-1.2:-1.2:1 --speed 7');
    const found = report('solve curved-race.json --speed 7');
    expect(Number(rows[0]!['inducedDrag.farField'])).toBe(found.inducedDrag.farField);
    expect(Number(rows[0]!['stability.craft.Cnr'])).toBe(found.stability.craft.Cnr);
  });

  it('runs the grid of several paths, the last fastest, and takes negative values', () => {
    const { columns, rows } = table(
      'sweep curved-race.json --vary=brief.depth=0.4:0.5:2 --vary wing.twist.tip=-3:-1:2',
    );
    expect(columns.slice(0, 2)).toEqual(['brief.depth', 'wing.twist.tip']);
    expect(rows.map((row) => [row['brief.depth'], row['wing.twist.tip']])).toEqual([
      ['0.4', '-3'],
      ['0.4', '-1'],
      ['0.5', '-3'],
      ['0.5', '-1'],
    ]);
  });

  it('leaves the cell empty of a figure that does not exist', () => {
    const { rows } = table('sweep flat-race.json --vary wing.incidence=0:1:2 --lift -100');
    expect(rows.map((row) => row['stability.holdIndex'])).toEqual(['', '']);
  });

  it('writes the table to a file and then prints nothing', () => {
    const files = memoryFiles();
    const line = 'sweep curved-race.json --vary wing.incidence=0:1:2 --strips 8';
    expect(run(`${line} --out droop.csv`, files)).toEqual({ code: 0, output: '', error: '' });
    expect(files.written.get('droop.csv')).toBe(run(line).output);
  });
});

describe('modes', () => {
  const modes = (line: string) => {
    const { code, output, error } = run(line);
    expect([code, error]).toEqual([0, '']);
    return JSON.parse(output) as Array<{ group: string; real: number; imaginary: number }>;
  };

  it('prints every eigenvalue of both groups, pairs complete', () => {
    const found = modes('modes curved-race.json');
    expect(found.map(({ group }) => group)).toEqual([
      ...Array(4).fill('lateral'),
      ...Array(5).fill('vertical'),
    ]);
    for (const root of found) {
      expect(Object.keys(root)).toEqual(['group', 'real', 'imaginary']);
      const mirrored = found.filter(
        ({ real, imaginary }) => real === root.real && imaginary === -root.imaginary,
      );
      expect(mirrored.length).toBeGreaterThan(0);
    }
  });

  it('at another speed has other roots, and needs a speed in range', () => {
    expect(modes('modes curved-race.json --speed 6')).not.toEqual(modes('modes curved-race.json'));
    expect(run('modes curved-race.json --speed 60').error).toBe('--speed: found 60, allowed 0.5 to 30 m/s');
    expect(run('modes curved-race.json --alpha 2').error).toMatch(/found option --alpha, allowed --speed/);
  });
});

describe('bad input', () => {
  const SWEEP = 'sweep curved-race.json';

  it.each<[string, string | RegExp]>([
    ['fly curved-race.json', 'found command "fly", allowed solve, sweep'],
    ['constructor', 'found command "constructor", allowed solve, sweep'],
    ['solve', /^solve: found no FILE, allowed solve FILE/],
    ['solve nowhere.json', 'nowhere.json: cannot be read (no such file or folder)'],
    [
      'solve curved-race.json flat-race.json',
      'solve: found "flat-race.json" after the FILE, allowed one FILE',
    ],
    ['solve curved-race.json --sped 5', /^found option --sped, allowed --speed --alpha/],
    ['solve curved-race.json -s 5', /^found option -s, allowed/],
    ['solve curved-race.json --out x.json', /^found option --out, allowed/],
    ['solve curved-race.json --alpha 1 --lift 500', '--alpha and --lift: found both, allowed one of the two'],
    ['solve curved-race.json --depth 0.5 --deep', '--depth and --deep: found both, allowed one of the two'],
    ['solve curved-race.json --deep=yes', '--deep: found "yes", allowed without a value'],
    ['solve curved-race.json --speed 5 --speed=6', '--speed: found twice, allowed once'],
    ['solve curved-race.json --speed', '--speed: found no value, allowed --speed VALUE'],
    ['solve curved-race.json --speed=', '--speed: found no value, allowed --speed VALUE'],
    ['solve curved-race.json --speed --deep', '--speed: found no value, allowed --speed VALUE'],
    ['solve curved-race.json --speed fast', '--speed: found "fast", allowed 0.5 to 30 m/s'],
    ['solve curved-race.json --speed 0x10', '--speed: found "0x10", allowed 0.5 to 30 m/s'],
    ['solve curved-race.json --speed NaN', '--speed: found "NaN", allowed 0.5 to 30 m/s'],
    ['solve curved-race.json --speed Infinity', '--speed: found "Infinity", allowed 0.5 to 30 m/s'],
    ['solve curved-race.json --speed 18kn', '--speed: found "18kn", allowed 0.5 to 30 m/s'],
    ['solve curved-race.json --speed 0.4', '--speed: found 0.4, allowed 0.5 to 30 m/s'],
    ['solve curved-race.json --speed -5', '--speed: found -5, allowed 0.5 to 30 m/s'],
    ['solve curved-race.json --alpha 60', '--alpha: found 60, allowed -45 to 45 deg'],
    ['solve curved-race.json --lift 1e9', '--lift: found 1e9, allowed -100000 to 100000 N'],
    ['solve curved-race.json --depth 0', '--depth: found 0, allowed above 0 to 5 m'],
    ['solve curved-race.json --depth 1.5', "brief.depth: found 1.5 m, allowed up to the strut's length, 1 m"],
    [
      'solve curved-race.json --depth 0.01',
      /^stabilizer: found a station 0\.018 m above the origin, allowed below/,
    ],
    ['solve curved-race.json --speed 0.5', /^no angle between -45 and 45 degrees carries this lift/],
    ['solve curved-race.json --strips 1', '--strips: found 1, allowed a whole number from 2 to 400'],
    ['solve curved-race.json --strips 401', '--strips: found 401, allowed a whole number from 2 to 400'],
    ['solve curved-race.json --strips 8.5', '--strips: found 8.5, allowed a whole number from 2 to 400'],
    [
      'solve curved-race.json --stabilizer-strips 0',
      '--stabilizer-strips: found 0, allowed a whole number from 2 to 400',
    ],
    ['solve curved-race.json --rows 0', '--rows: found 0, allowed a whole number from 1 to 32'],
    ['solve curved-race.json --rows 33', '--rows: found 33, allowed a whole number from 1 to 32'],
    [
      'solve curved-race.json --rows 32 --strips 400',
      '--rows: found 32 with 400 strips, allowed a product of up to 1600',
    ],
    ['solve curved-race.json --sections thick', '--sections: found "thick", allowed thin or real'],
    [SWEEP, '--vary: found none, allowed one or more --vary PATH=FROM:TO:COUNT'],
    [
      `${SWEEP} --vary wing.droop.tipAngle`,
      '--vary: found "wing.droop.tipAngle", allowed PATH=FROM:TO:COUNT',
    ],
    [
      `${SWEEP} --vary wing.droop.tipAngle=0:40`,
      '--vary: found "wing.droop.tipAngle=0:40", allowed PATH=FROM:TO:COUNT',
    ],
    [
      `${SWEEP} --vary wing.droop.tipAngle=a:40:3`,
      '--vary wing.droop.tipAngle: found "a", allowed a number as FROM',
    ],
    [
      `${SWEEP} --vary wing.droop.tipAngle=0::3`,
      '--vary wing.droop.tipAngle: found "", allowed a number as TO',
    ],
    [
      `${SWEEP} --vary wing.droop.tipAngle=0:40:0`,
      '--vary wing.droop.tipAngle: found "0", allowed a whole number above 0 as COUNT',
    ],
    [
      `${SWEEP} --vary wing.droop.tipAngle=0:40:2.5`,
      '--vary wing.droop.tipAngle: found "2.5", allowed a whole number above 0 as COUNT',
    ],
    [`${SWEEP} --vary wing.droop.tipAngle=0:40:1000000`, '--vary: found 1000000 cases, allowed up to 100000'],
    [
      `${SWEEP} --vary brief.depth=0.3:0.5:2 --vary brief.depth=0.3:0.5:2`,
      '--vary: found brief.depth twice, allowed once',
    ],
    [`${SWEEP} --vary wing.drop.tipAngle=0:40:3`, 'wing.drop.tipAngle: found no number there'],
    [`${SWEEP} --vary wing.droop.kind=0:40:3`, 'wing.droop.kind: found no number there'],
    [`${SWEEP} --vary __proto__.x=0:40:3`, '__proto__.x: found no number there'],
    [
      `${SWEEP} --vary wing.droop.tipAngle=60:120:3 --strips 8`,
      'wing.droop.tipAngle=120: wing.droop.tipAngle: found 120, allowed -90 to 90 deg',
    ],
    [
      `${SWEEP} --vary brief.speeds.cruise=0.5:9:2 --strips 8`,
      /^brief\.speeds\.cruise=0\.5: no angle between/,
    ],
    [
      `${SWEEP} --vary wing.incidence=0:1:2 --strips 8 --out nowhere/x.csv`,
      '--out: found "nowhere/x.csv", which cannot be written (no such file or folder)',
    ],
  ])('%s', (line, message) => {
    const files = memoryFiles();
    const { code, output, error } = run(line, files);
    expect([code, output]).toEqual([2, '']);
    if (typeof message === 'string') expect(error).toContain(message);
    else expect(error).toMatch(message);
    expect(error).not.toContain('\n');
    expect(files.written.size).toBe(0);
  });

  it('no words at all', () => {
    const { code, output, error } = runBatch([], memoryFiles());
    expect([code, output]).toEqual([2, '']);
    expect(error).toMatch(/^found no command, allowed solve, sweep/);
  });

  it('every broken document, by file and key path, for both commands', () => {
    for (const { text, change, message } of BROKEN) {
      const files = memoryFiles({
        'broken.json': text ?? JSON.stringify(changed(goodDocument(), change ?? {})),
      });
      for (const line of ['solve broken.json', 'sweep broken.json --vary wing.incidence=0:1:2']) {
        const { code, output, error } = run(line, files);
        expect([code, output]).toEqual([2, '']);
        expect(error.startsWith('broken.json: ')).toBe(true);
        expect(error).not.toContain('\n');
        const rest = error.slice('broken.json: '.length);
        if (typeof message === 'string') expect(rest).toContain(message);
        else expect(rest).toMatch(message);
      }
    }
  });

  it('is told from a fault of the program, which is not swallowed', () => {
    const files = memoryFiles();
    files.read = () => null as unknown as string;
    expect(() => run('solve curved-race.json', files)).toThrow(TypeError);
  });
});

describe('help', () => {
  it.each(['help', '--help'])('%s prints how each command is called', (word) => {
    const { code, output } = run(word);
    expect(code).toBe(0);
    expect(output).toContain('npm run -s batch -- solve FILE');
    expect(output).toContain('npm run -s batch -- sweep FILE --vary PATH=FROM:TO:COUNT');
  });
});
