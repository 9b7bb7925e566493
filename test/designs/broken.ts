/**
 * Broken documents: each differs from a good one in one thing, and each has the one message it must be refused with.
 * `change` sets dotted paths (undefined takes a key away); `text` stands for the whole document.
 */

export interface BrokenDocument {
  what: string;
  change?: Record<string, unknown>;
  text?: string;
  message: string | RegExp;
}

const deep = (levels: number): unknown => (levels === 0 ? 1 : { in: deep(levels - 1) });

/** Points of a thin, flat outline, from the trailing edge over the top and back. */
const outline = (change: (x: number, k: number) => [number, number]) => ({
  kind: 'coordinates',
  name: 'test',
  points: Array.from({ length: 21 }, (_, k) => change(Math.abs(1 - k / 10), k)),
});

export const BROKEN: readonly BrokenDocument[] = [
  // Text that is no document.
  {
    what: 'an empty file',
    text: '',
    message: 'not a JSON document: line 1, column 1: found the end of the text, allowed a value',
  },
  {
    what: 'prose',
    text: 'My new wing',
    message: 'not a JSON document: line 1, column 1: found "My", allowed a value',
  },
  {
    what: 'a file cut short',
    text: '{\n "format": "downcurve-design",\n "version": 1',
    message: /^not a JSON document: line 3, column 14: found the end of the text, allowed , or }$/,
  },
  {
    what: 'a comma too many',
    text: '{"format": "downcurve-design",}',
    message: 'not a JSON document: line 1, column 31: found "}", allowed a key',
  },
  {
    what: 'a number that JSON does not know',
    text: '{"version": NaN}',
    message: 'not a JSON document: line 1, column 13: found "NaN", allowed a value',
  },
  {
    what: 'single quotes',
    text: "{'version': 1}",
    message: 'not a JSON document: line 1, column 2: found "\'", allowed a key or }',
  },
  {
    what: 'a comment',
    text: '{ // mine\n}',
    message: 'not a JSON document: line 1, column 3: found "/", allowed a key or }',
  },
  {
    what: 'a line break in a text',
    text: '{"name": "two\nlines"}',
    message: /^not a JSON document: line 1, column 10: found a text without an end/,
  },
  {
    what: 'a key given twice',
    text: '{"name": "a", "name": "b"}',
    message:
      'not a JSON document: line 1, column 15: found the key "name" a second time, allowed each key once',
  },
  {
    what: 'something after the end',
    text: '{} {}',
    message: 'not a JSON document: line 1, column 4: found "{", allowed the end',
  },
  {
    what: 'a nest of lists',
    text: '['.repeat(100_000),
    message: 'not a JSON document: line 1, column 41: found lists and objects 41 deep, allowed 40',
  },
  {
    what: 'a huge file',
    text: `{"notes": "${'x'.repeat(1_000_000)}"}`,
    message: 'document: found 1000013 characters, allowed up to 1000000',
  },
  {
    what: 'a list',
    text: '[1, 2]',
    message: 'document: found a list of 2, allowed an object with format "downcurve-design"',
  },
  {
    what: 'a bare number',
    text: '5',
    message: 'document: found 5, allowed an object with format "downcurve-design"',
  },
  {
    what: 'a key that reaches a prototype',
    text: '{"format": "downcurve-design", "__proto__": {"x": 1}}',
    message: '__proto__: found a key of this name, allowed any other name',
  },

  // Another document.
  {
    what: 'no format',
    change: { format: undefined },
    message: 'format: found nothing, allowed "downcurve-design"',
  },
  {
    what: 'another format',
    change: { format: 'drawing' },
    message: 'format: found "drawing", allowed "downcurve-design"',
  },
  {
    what: 'no version',
    change: { version: undefined },
    message: 'version: found nothing, allowed a whole number up to 1',
  },
  {
    what: 'a version in words',
    change: { version: 'one' },
    message: 'version: found "one", allowed a whole number up to 1',
  },
  {
    what: 'half a version',
    change: { version: 0.5 },
    message: 'version: found 0.5, allowed a whole number up to 1',
  },
  {
    what: 'a newer version',
    change: { version: 7 },
    message: 'version: found 7, allowed up to 1; a newer Downcurve made this document',
  },

  // Missing keys and wrong shapes.
  {
    what: 'no brief',
    change: { brief: undefined },
    message: /^brief: found nothing, allowed an object with allUpMass, /,
  },
  {
    what: 'no wing',
    change: { wing: undefined },
    message: /^wing: found nothing, allowed an object with length, chord, /,
  },
  {
    what: 'a list for a wing',
    change: { wing: [] },
    message: /^wing: found an empty list, allowed an object with length, /,
  },
  {
    what: 'a stabilizer left out rather than null',
    change: { stabilizer: undefined },
    message: /^stabilizer: found nothing, allowed an object with .*, or null$/,
  },
  {
    what: 'a stabilizer without an arm',
    change: { 'stabilizer.arm': undefined },
    message: 'stabilizer.arm: found nothing, allowed 0.1 to 3 m',
  },
  {
    what: 'a fuselage that is a number',
    change: { fuselage: 5 },
    message: 'fuselage: found 5, allowed an object with diameter, nose, or null',
  },
  {
    what: 'a depth left out',
    change: { 'brief.depth': undefined },
    message: 'brief.depth: found nothing, allowed above 0 to 5 m, or null for deep water',
  },
  {
    what: 'a list for depths',
    change: { 'brief.depths': [0.3] },
    message: 'brief.depths: found a list of 1, allowed an object',
  },
  {
    what: 'a name that is a number',
    change: { name: 5 },
    message: 'name: found 5, allowed a text of up to 200 characters',
  },
  {
    what: 'a name without end',
    change: { name: 'x'.repeat(300) },
    message: /^name: found "x{40}\.\.\.", allowed a text of up to 200 characters$/,
  },
  {
    what: 'a number in quotation marks',
    change: { 'brief.allUpMass': '92' },
    message: 'brief.allUpMass: found "92", allowed 20 to 400 kg',
  },
  {
    what: 'true for a number',
    change: { 'wing.incidence': true },
    message: 'wing.incidence: found true, allowed -30 to 30 deg',
  },
  {
    what: 'null for a number',
    change: { 'strut.chord': null },
    message: 'strut.chord: found null, allowed 0.01 to 1 m',
  },

  // Unknown kinds.
  {
    what: 'an unknown chord law',
    change: { 'wing.chord.kind': 'wavy' },
    message:
      'wing.chord.kind: found "wavy", allowed one of "taper", "elliptic", "superelliptic", "points", "formula"',
  },
  {
    what: 'a law without a kind',
    change: { 'wing.sweep.kind': undefined },
    message: 'wing.sweep.kind: found nothing, allowed one of "straight", "rake", "points", "formula"',
  },
  {
    what: 'a law that is a number',
    change: { 'wing.droop': 20 },
    message: /^wing\.droop: found 20, allowed an object whose kind is one of "flat", /,
  },
  {
    what: 'an unknown length',
    change: { 'wing.length.kind': 'wetted' },
    message: 'wing.length.kind: found "wetted", allowed one of "unrolled", "tipToTip"',
  },
  {
    what: 'unknown water',
    change: { 'brief.water.kind': 'oil' },
    message: 'brief.water.kind: found "oil", allowed one of "sea", "fresh"',
  },
  {
    what: 'a section code of three digits',
    change: { 'wing.section.root.code': '241' },
    message: /^wing\.section\.root\.code: found "241", allowed four digits such as 2412/,
  },
  {
    what: 'a section code as a number',
    change: { 'wing.section.tip.code': 2412 },
    message: /^wing\.section\.tip\.code: found 2412, allowed four digits/,
  },
  {
    what: 'camber without a place',
    change: { 'stabilizer.section.tip.code': '2012' },
    message:
      /^stabilizer\.section\.tip\.code: found "2012", allowed four digits .*its place \(above 0 where there is camber\)/,
  },

  // Numbers out of range.
  {
    what: 'a negative chord',
    change: { 'wing.chord': { kind: 'taper', root: 0.1, tip: -0.02 } },
    message: 'wing.chord.tip: found -0.02, allowed 0 to 1 m',
  },
  {
    what: 'no chord at the root',
    change: { 'wing.chord': { kind: 'elliptic', root: 0 } },
    message: 'wing.chord.root: found 0, allowed above 0 to 1 m',
  },
  {
    what: 'a length of nothing',
    change: { 'wing.length.value': 0 },
    message: 'wing.length.value: found 0, allowed 0.05 to 5 m',
  },
  {
    what: 'a speed beyond the range',
    change: { 'brief.speeds.top': 31 },
    message: 'brief.speeds.top: found 31, allowed 0.5 to 30 m/s',
  },
  {
    what: 'a depth of nothing',
    change: { 'brief.depth': 0 },
    message: 'brief.depth: found 0, allowed above 0 to 5 m, or null for deep water',
  },
  {
    what: 'water that boils',
    change: { 'brief.water.temperature': 100 },
    message: 'brief.water.temperature: found 100, allowed 0 to 35 deg C',
  },
  {
    what: 'a thick strut',
    change: { 'strut.thickness': 0.2 },
    message: 'strut.thickness: found 0.2, allowed 0.003 to 0.05 m',
  },

  // Laws that break.
  {
    what: 'points that cross',
    change: {
      'wing.chord': {
        kind: 'points',
        at: [
          [0, 0.1],
          [0.6, 0.09],
          [0.5, 0.08],
          [1, 0.03],
        ],
      },
    },
    message: 'wing.chord.at.2.0: found 0.5 after 0.6, allowed eta that rises from point to point',
  },
  {
    what: 'two points at one place',
    change: {
      'wing.twist': {
        kind: 'points',
        at: [
          [0, 0],
          [0, -1],
          [1, -2],
        ],
      },
    },
    message: 'wing.twist.at.1.0: found 0 after 0, allowed eta that rises from point to point',
  },
  {
    what: 'points that begin late',
    change: {
      'wing.sweep': {
        kind: 'points',
        at: [
          [0.1, 0],
          [1, 0.03],
        ],
      },
    },
    message: 'wing.sweep.at.0.0: found 0.1, allowed 0, as points run from the root at eta 0',
  },
  {
    what: 'points that end early',
    change: {
      'wing.droop': {
        kind: 'points',
        at: [
          [0, 0],
          [0.9, 20],
        ],
      },
    },
    message: 'wing.droop.at.1.0: found 0.9, allowed 1, as points run to the tip at eta 1',
  },
  {
    what: 'one point',
    change: { 'wing.droop': { kind: 'points', at: [[0, 0]] } },
    message: 'wing.droop.at: found a list of 1, allowed a list of 2 to 100 pairs [eta, value]',
  },
  {
    what: 'a point of three numbers',
    change: {
      'wing.droop': {
        kind: 'points',
        at: [
          [0, 0, 0],
          [1, 1],
        ],
      },
    },
    message: 'wing.droop.at.0.2: found 0, allowed a pair [eta, value]',
  },
  {
    what: 'a point outside the span',
    change: {
      'wing.droop': {
        kind: 'points',
        at: [
          [0, 0],
          [1.2, 1],
        ],
      },
    },
    message: 'wing.droop.at.1.0: found 1.2, allowed 0 to 1',
  },
  {
    what: 'a chord that vanishes inside the span',
    change: {
      'wing.chord': {
        kind: 'points',
        at: [
          [0, 0.1],
          [0.5, 0],
          [1, 0.05],
        ],
      },
    },
    message: 'wing.chord.at.1.1: found 0, allowed above 0 to 1 m, 0 at the tip only',
  },
  {
    what: 'droop without a measure',
    change: { 'wing.droop': { kind: 'arc' } },
    message: 'wing.droop: found neither tipAngle nor tipDrop, allowed exactly one of tipAngle and tipDrop',
  },
  {
    what: 'droop with two measures',
    change: { 'wing.droop': { kind: 'arc', tipAngle: 20, tipDrop: 0.06 } },
    message: 'wing.droop: found both tipAngle and tipDrop, allowed exactly one of tipAngle and tipDrop',
  },
  {
    what: 'a tip drop out of reach',
    change: { 'wing.droop': { kind: 'vee', tipDrop: 0.5 } },
    message: /^wing\.droop\.tipDrop: found 0\.5 m, allowed -0\.370 to 0\.370 m with this length$/,
  },

  {
    what: 'a wing folded shut',
    change: { 'wing.droop': { kind: 'vee', tipAngle: 90 } },
    message: 'wing.droop: found a span of 0.000 m, allowed 2 % of the unrolled length or more',
  },

  // Hostile and careless formulas.
  {
    what: 'a formula with an unknown name',
    change: { 'wing.chord': { kind: 'formula', expression: '0.1 * span' } },
    message: /^wing\.chord\.expression: found "span" at place 7, allowed numbers, /,
  },
  {
    what: 'a formula that assigns',
    change: { 'wing.chord': { kind: 'formula', expression: 'eta = 0.1' } },
    message: /^wing\.chord\.expression: found "=" at place 5, allowed /,
  },
  {
    what: 'a formula that reaches for the program',
    change: { 'wing.sweep': { kind: 'formula', expression: 'eta.constructor("return 1")()' } },
    message: /^wing\.sweep\.expression: found "\." at place 4, allowed /,
  },
  {
    what: 'a formula without end',
    change: { 'wing.twist': { kind: 'formula', expression: '1+'.repeat(5000) } },
    message: 'wing.twist.expression: found 10000 characters, allowed up to 400',
  },
  {
    what: 'a formula nested without end',
    change: { 'wing.droop': { kind: 'formula', expression: '('.repeat(399) } },
    message: 'wing.droop.expression: found parentheses 41 deep at place 41, allowed up to 40',
  },
  {
    what: 'a formula that is a number',
    change: { 'wing.droop': { kind: 'formula', expression: 20 } },
    message: 'wing.droop.expression: found 20, allowed a formula in eta',
  },
  {
    what: 'a formula that divides by nothing',
    change: { 'wing.sweep': { kind: 'formula', expression: '0.01 / eta' } },
    message:
      'wing.sweep.expression: found Infinity at eta 0, allowed a finite number at every eta from 0 to 1',
  },
  {
    what: 'a formula without a value',
    change: { 'wing.chord': { kind: 'formula', expression: '0.1 * sqrt(0.25 - eta)' } },
    message: 'wing.chord.expression: found 0 at eta 0.25, allowed above 0 to 1 m, 0 at the tip only',
  },
  {
    what: 'a chord formula that turns negative',
    change: { 'wing.chord': { kind: 'formula', expression: '0.1 - 0.11 * eta' } },
    message:
      /^wing\.chord\.expression: found -0\.000\d+ at eta 0\.91\d*, allowed above 0 to 1 m, 0 at the tip only$/,
  },
  {
    what: 'a twist formula out of range',
    change: { 'wing.twist': { kind: 'formula', expression: '30 * eta' } },
    message: /^wing\.twist\.expression: found 20\.\d+ at eta 0\.67, allowed -20 to 20 deg at every eta$/,
  },
  {
    what: 'a droop formula out of range',
    change: { 'wing.droop': { kind: 'formula', expression: '-100 * eta' } },
    message: /^wing\.droop\.expression: found -90\.5 at eta 0\.905, allowed -90 to 90 deg at every eta$/,
  },

  // Outlines.
  {
    what: 'an outline of few points',
    change: {
      'wing.section.root': {
        kind: 'coordinates',
        name: 'x',
        points: [
          [1, 0],
          [0, 0],
          [1, 0],
        ],
      },
    },
    message: 'wing.section.root.points: found a list of 3, allowed a list of 10 to 1000 pairs [x, y]',
  },
  {
    what: 'an outline in millimetres',
    change: { 'wing.section.root': outline((x) => [120 * x, 0.05]) },
    message: 'wing.section.root.points.0.0: found 120, allowed -0.05 to 1.05',
  },
  {
    what: 'half an outline',
    change: { 'wing.section.tip': outline((x, k) => [x / 2, k < 10 ? 0.05 : -0.05]) },
    message: /^wing\.section\.tip\.points: found x from 0 to 0\.5, allowed x from 0 at the leading edge to 1/,
  },
  {
    what: 'an outline in another order',
    change: { 'wing.section.tip': outline((_x, k) => [k / 20, k % 2 ? 0.05 : -0.05]) },
    message:
      /^wing\.section\.tip\.points: found x 0 as point 1, allowed points from the trailing edge along one side/,
  },

  // What does not fit the water.
  {
    what: 'deeper than the strut',
    change: { 'brief.depth': 1.2 },
    message: "brief.depth: found 1.2 m, allowed up to the strut's length, 1 m",
  },
  {
    what: 'deeper than the strut at take-off',
    change: { 'brief.depths': { takeOff: 1.5 } },
    message: "brief.depths.takeOff: found 1.5 m, allowed up to the strut's length, 1 m",
  },
  {
    what: 'tips above the surface',
    change: { 'wing.droop': { kind: 'vee', tipAngle: -80 }, 'brief.depth': 0.3 },
    message: /^wing: found a station 0\.364 m above the origin, allowed below the surface at 0\.3 m$/,
  },
  {
    what: 'tips above the surface at take-off',
    change: { 'wing.droop': { kind: 'vee', tipAngle: -80 }, 'brief.depths': { takeOff: 0.2 } },
    message: /^wing: found a station 0\.364 m above the origin, allowed below the surface at 0\.2 m$/,
  },
  {
    what: 'a stabilizer that runs into the wing',
    change: {
      'stabilizer.arm': 0.1,
      'stabilizer.height': 0,
      'wing.chord': { kind: 'taper', root: 0.2, tip: 0.06 },
    },
    message: /^stabilizer: found it touching the wing \d\.\d{3} m from the middle, allowed clear of it/,
  },
  {
    what: 'a stabilizer above the surface',
    change: { 'stabilizer.height': 0.6 },
    message: /^stabilizer: found a station 0\.600 m above the origin, allowed below the surface at 0\.55 m$/,
  },

  // Unknown keys are kept, but not everything can be.
  {
    what: 'notes nested without end',
    change: { remarks: deep(60) },
    message: /^not a JSON document: line 1, column \d+: found lists and objects 41 deep, allowed 40$/,
  },
  {
    what: 'a quantity whose range runs backwards',
    change: { wanted: { free: { area: { least: 0.08, most: 0.06 } } } },
    message: 'wanted.free.area.most: found 0.06, allowed 0.08, its least, or above',
  },
  {
    what: 'a limit that no figure can meet from both sides',
    change: { wanted: { limits: { span: { least: 0.8, most: 0.7 } } } },
    message: 'wanted.limits.span.most: found 0.7, allowed 0.8, its least, or above',
  },
  {
    what: 'a free quantity without its other end',
    change: { wanted: { free: { arm: { least: 0.5 } } } },
    message: 'wanted.free.arm.most: found nothing, allowed 0.1 to 3 m',
  },
  {
    what: 'no speed that counts',
    change: { wanted: { weights: { takeOff: 0, cruise: 0, top: 0 } } },
    message: 'wanted.weights: found nothing but 0, allowed a weight above 0',
  },
  {
    what: 'a law to try twice',
    change: { wanted: { laws: { droop: ['arc', 'arc'] } } },
    message: 'wanted.laws.droop: found a list of 2, allowed a list of one or more kinds of law, each once',
  },
];

/** Broken documents that only exist in memory: JSON text cannot say them. */
export const BROKEN_VALUES: readonly BrokenDocument[] = [
  {
    what: 'a speed that is not a number',
    change: { 'brief.speeds.cruise': Number.NaN },
    message: 'brief.speeds.cruise: found NaN, allowed 0.5 to 30 m/s',
  },
  {
    what: 'an infinite depth',
    change: { 'brief.depth': Number.POSITIVE_INFINITY },
    message: 'brief.depth: found Infinity, allowed above 0 to 5 m',
  },
  {
    what: 'an infinite point',
    change: {
      'wing.droop': {
        kind: 'points',
        at: [
          [0, 0],
          [1, Number.NEGATIVE_INFINITY],
        ],
      },
    },
    message: 'wing.droop.at.1.1: found -Infinity, allowed -90 to 90 deg',
  },
  {
    what: 'notes that hold no number',
    change: { remarks: { feel: [1, Number.NaN] } },
    message: 'remarks.feel.1: found NaN, allowed a finite number',
  },
  {
    what: 'a function',
    change: { remarks: () => 1 },
    message: 'remarks: found a function, allowed plain data',
  },
  {
    what: 'a date',
    change: { remarks: new Date(0) },
    message: 'remarks: found an object, allowed plain data',
  },
];
