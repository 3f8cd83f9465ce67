// Parameter files made to exhaust or mislead whatever reads them, each in a process with little memory.
import { execFile } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { command, folderWith, spinner } from './command.js';

/** Heap of each process, MB. */
const HEAP = 150;
/** Processes at a time. */
const LANES = 3;

const repeated = (length: number, piece: (i: number) => string) =>
  Array.from({ length }, (_, i) => piece(i)).join('');

/** Ten levels, each ten times the one before. */
const bomb = (line: (i: number, tenfold: string) => string) =>
  repeated(10, (i) =>
    line(
      i,
      `[${Array(10)
        .fill(i ? `*a${i - 1}` : '"lol"')
        .join(', ')}]`,
    ),
  );

const axesOfPrototypes = ['__proto__.module', 'constructor.prototype.gap', 'fit.__proto__.gap'];
const axes = ['module', 'faceWidth', 'fit.gap', 'sun.teeth', 'planets.teeth'];

/** Names are cut short where they are shown. */
const shown = `${'k'.repeat(79)}…`;

/** What it is, the file, and the parameters that the messages must name, one a line. */
const corpus: [string, string | Uint8Array, string[]][] = [
  ['aliases that multiply', `${spinner}${bomb((i, ten) => `x${i}: &a${i} ${ten}\n`)}`, ['file']],
  [
    'the same in the form of JSON',
    `{${bomb((i, ten) => `"x${i}": &a${i} ${ten},`)}"kind": "planetary"}`,
    ['file'],
  ],
  ['a megabyte of keys', `${spinner}${repeated(75_000, (i) => `k${i}: 1\n`)}`, ['file']],
  [
    'keys of prototypes at several depths',
    `${spinner}__proto__: { module: 9 }\nconstructor: { prototype: { polluted: 1 } }\nfit: { __proto__: { gap: 9 } }
ring: { rim: 5, prototype: { rim: 1 } }\n`,
    ['__proto__', 'constructor', 'fit.__proto__', 'ring.prototype'],
  ],
  [
    'numbers at the limits of doubles and beyond',
    spinner
      .replace('1.5', '1.7976931348623157e308')
      .replace('faceWidth: 5', 'faceWidth: 5e-324')
      .replace('teeth: 18 }', 'teeth: 9007199254740993 }')
      .replace('planets: { teeth: 18', `planets: { teeth: 1${'0'.repeat(400)}`)
      .replace('0.03', '-0.0'),
    ['module', 'faceWidth', 'sun.teeth', 'planets.teeth', 'tolerance'],
  ],
  [
    'thirty thousand mappings in each other',
    `${spinner}fit: ${'{a: '.repeat(30_000)}1${'}'.repeat(30_000)}\n`,
    ['file'],
  ],
  [
    'a huge name, and a huge word for a number',
    spinner
      .replace('name: spinner', `name: ${'x'.repeat(450_000)}`)
      .replace('1.5', `"${'9'.repeat(450_000)}"`),
    ['name', 'module'],
  ],
  ['a huge key', `${spinner}${'k'.repeat(900)}: 1\n? ${'k'.repeat(900_000)}\n: 1\n`, [shown, shown]],
  ['NUL bytes', `${spinner.replace('1.5', '1\0.5')}`, ['file']],
  [
    'bytes that are no UTF-8',
    Uint8Array.from([...Buffer.from(spinner), 0xc0, 0xaf, 0xed, 0xa0, 0x80]),
    ['file'],
  ],
  ['keys twice, one of them in quotes', `${spinner}"module": 2\n'kind': gear\n`, ['file', 'file']],
  [
    'the wrong type everywhere',
    'name: [1]\nkind: { a: 1 }\nmodule: true\nfaceWidth: 2024-01-01\nhelix: 3\nbevel: null\nsun: [18]\nplanets: "3"\ntolerance: {}\nvariants: 7\n',
    ['name', 'kind', 'module', 'faceWidth', 'helix', 'bevel', 'sun', 'planets', 'tolerance', 'variants'],
  ],
];
const batches: typeof corpus = [
  [
    'ten thousand million variants',
    `${spinner}variants: { ${axes.map((path) => `${path}: [${Array.from({ length: 100 }, (_, i) => i + 1)}]`).join(', ')} }\n`,
    ['variants'],
  ],
  [
    'variants of prototypes',
    `${spinner}variants: { ${axesOfPrototypes.map((path) => `${path}: [1, 2]`).join(', ')} }\n`,
    axesOfPrototypes.map((path) => `variants.${path}`),
  ],
];

/** Tries one file; a sentence for each thing that is wrong with what became of it. */
async function tried(verb: string, [what, content, names]: (typeof corpus)[number]): Promise<string[]> {
  const folder = folderWith({ 'set.yaml': content });
  const words = [
    `--max-old-space-size=${HEAP}`,
    command,
    verb,
    'set.yaml',
    ...(verb === 'batch' ? ['--out', 'out'] : []),
  ];
  const { status, stdout, stderr } = await new Promise<{ status: unknown; stdout: string; stderr: string }>(
    (resolve) =>
      execFile(
        process.execPath,
        words,
        { cwd: folder, timeout: 30_000, maxBuffer: 1 << 26 },
        (error, stdout, stderr) =>
          resolve({ status: error ? (error.code ?? error.signal) : 0, stdout, stderr }),
      ),
  );
  const lines = stderr.trimEnd().split('\n');
  const named = lines.map((line) => /^cogweave: ([^:]+): \S/.exec(line)?.[1] ?? line);
  const faults = [
    status !== 2 && `exit ${status}`,
    stdout !== '' && `prints ${stdout.slice(0, 100)}`,
    named.sort().join() !== [...names].sort().join() && `says ${stderr.slice(0, 500)}`,
    /^\s+at |\.js:\d|internal|heap/m.test(stderr) && 'shows its inside',
    stderr.length > 8000 && `says ${stderr.length} characters`,
    readdirSync(folder).length > 1 && 'writes files',
  ];
  return faults.filter((fault) => typeof fault === 'string').map((fault) => `${what}: ${fault}`);
}

describe('hostile parameter files', () => {
  it('exit 2, name a parameter, in little memory, and write nothing', async () => {
    const queue = [
      ...batches.map((one) => () => tried('batch', one)),
      ...corpus.map((one) => () => tried('inspect', one)),
    ].values();
    const faults: string[] = [];
    const lane = async () => {
      for (const next of queue) faults.push(...(await next()));
    };
    await Promise.all(Array.from({ length: LANES }, lane));
    expect(faults).toEqual([]);
  });
});
