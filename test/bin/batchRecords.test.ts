// Records and files of a batch that are not as they were left.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { folderWith, run } from './command.js';

/** The quickest there is to make: one small idler of the invented exhibit table. */
const file = `name: idler
kind: gear
module: 1.5
faceWidth: 3
helix: { form: spur }
gear: { teeth: 8 }
tolerance: 0.2
variants: { fit.gap: [0.2, 0.25, 0.3] }
`;
const names = ['idler_gap-0.2', 'idler_gap-0.25', 'idler_gap-0.3'];
const batch = (folder: string, ...words: string[]) =>
  run(
    folder,
    ...[
      'batch',
      'set.yaml',
      '--out',
      'out',
      '--format',
      'stl',
      '--picture-size',
      '32x24',
      '--jobs',
      '1',
      '--json',
    ],
    ...words,
  );
const bytesIn = (folder: string) =>
  Object.fromEntries(
    (readdirSync(join(folder, 'out'), { recursive: true }) as string[])
      .filter((name) => name !== 'records')
      .map((name) => [name, readFileSync(join(folder, 'out', name), 'base64')]),
  );
const statusOf = (folder: string) =>
  JSON.parse(readFileSync(join(folder, 'out', 'summary.json'), 'utf8')).variants.map(
    ({ status }: { status: string }) => status,
  );
const warnings = (stderr: string) =>
  stderr.split('\n').filter((line) => line && !/^cogweave: \d\/\d /.test(line));

it('records that are not whole are made again, with a word, to the same bytes', async () => {
  const folder = folderWith({ 'set.yaml': file });
  expect((await batch(folder)).status).toBe(0);
  const bytes = bytesIn(folder);
  const path = (name: string) => join(folder, 'out', 'records', `${name}.json`);
  const first = JSON.parse(readFileSync(path(names[0]), 'utf8'));
  writeFileSync(path(names[0]), JSON.stringify({ ...first, status: 'refused', refusal: null }));
  const second = JSON.parse(readFileSync(path(names[1]), 'utf8'));
  writeFileSync(path(names[1]), JSON.stringify({ ...second, written: [] }));
  writeFileSync(join(folder, 'out', `${names[2]}.stl`), 'of somebody else');
  const { status, stdout, stderr } = await batch(folder);
  expect([status, JSON.parse(stdout).made]).toEqual([0, 3]);
  expect(warnings(stderr)).toEqual([
    ...names
      .slice(0, 2)
      .map(
        (name) =>
          `cogweave: out/records/${name}.json is not a whole record; it counts for nothing, and ${name} is to be made again`,
      ),
    `cogweave: ${names[2]} is made again: ${names[2]}.stl gone, or not as written`,
    `cogweave: out/${names[2]}.stl was not the file that ${names[2]}.sheet.json beside it speaks of; it is replaced`,
  ]);
  expect(bytesIn(folder)).toEqual(bytes);
});

it('a summary names no files of another shard that are gone', async () => {
  const folder = folderWith({ 'set.yaml': file });
  expect((await batch(folder, '--shard', '1/2')).status).toBe(0);
  rmSync(join(folder, 'out', `${names[0]}.stl`));
  writeFileSync(join(folder, 'out', `${names[0]}.svg`), 'cut short');
  writeFileSync(join(folder, 'out', 'records', `${names[2]}.json`), '{}');
  const { status, stderr } = await batch(folder, '--shard', '2/2');
  expect(status).toBe(0);
  expect(warnings(stderr)).toEqual([
    `cogweave: ${names[0]} counts as missing: ${names[0]}.stl, ${names[0]}.svg gone, or not as long as written`,
    `cogweave: out/records/${names[2]}.json is not a whole record; it counts for nothing, and ${names[2]} is to be made again`,
  ]);
  expect(statusOf(folder)).toEqual(['missing', 'made', 'missing']);
  expect((await batch(folder, '--shard', '1/2')).status).toBe(0);
  expect(statusOf(folder)).toEqual(['made', 'made', 'made']);
});

it('a folder where a record is to be: exit 2, one line', async () => {
  const folder = folderWith({ 'set.yaml': file });
  mkdirSync(join(folder, 'out', 'records', `${names[0]}.json`), { recursive: true });
  const { status, stderr } = await batch(folder);
  expect(status).toBe(2);
  expect(stderr).toMatch(/^cogweave: out: out: cannot be written: .*$/m);
  expect(stderr).not.toMatch(/internal|^\s+at /m);
});
