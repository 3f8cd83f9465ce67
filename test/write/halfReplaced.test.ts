// A process that is killed while it writes a set, at every single step.
import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { digestsAt, isWhole } from '../../lib/write/digests.js';
import { clearLeftovers } from '../../lib/write/leftovers.js';
import { writeSet } from '../../lib/write/writeSet.js';
import { killedBy, tellsProcesses } from './faults.js';

const root = mkdtempSync(join(tmpdir(), 'cogweave-half-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const script = join(import.meta.dirname, 'writeTiny.mjs');
const names = ['tiny.stl', 'tiny.svg', 'tiny.sheet.html', 'tiny.sheet.json'];
/** Calls of each function that one writing makes, at most. */
const steps: [string, number][] = [
  ['open', 4],
  ['rename', 4],
  ['readdir', 1],
];
const faults = steps.flatMap(([name, count]) =>
  Array.from({ length: count }, (_, i) => `SIGKILL ${name} ${i + 1}`),
);

const folderWith = async (word: string) => {
  const folder = mkdtempSync(join(root, 'set-'));
  if (word) await write(folder, word);
  return folder;
};
const write = (folder: string, word: string, say?: (words: string) => void) =>
  writeSet(
    folder,
    { name: 'tiny', word },
    names.slice(0, 3).map((name) => ({
      name,
      chunks: () => [new TextEncoder().encode(`${word} ${name.slice(5)}`)],
    })),
    { say },
  );
/** Whose files stand in place, one word for each; nothing for one that is not there. */
const words = (folder: string) =>
  names.flatMap((name) => {
    if (!readdirSync(folder).includes(name)) return [];
    const text = readFileSync(join(folder, name), 'utf8');
    return [name.endsWith('.json') ? JSON.parse(text).word : text.split(' ')[0]];
  });
const vouchedFor = async (folder: string) => {
  const digests = digestsAt(join(folder, 'tiny.sheet.json'));
  return digests !== undefined && (await isWhole(folder, digests));
};
const temporaries = (folder: string) => readdirSync(folder).filter((name) => name.startsWith('.'));

describe.skipIf(!tellsProcesses)('a set whose writing is killed', () => {
  it.each(['old', ''])(
    'over %j: wholly as before or wholly new after the next run, and never mixed unseen',
    async (before) => {
      const met: string[] = [];
      const seen = new Set<string>();
      for (const fault of before ? faults : faults.filter((each) => each.startsWith('SIGKILL rename'))) {
        const folder = await folderWith(before);
        if (!(await killedBy(fault, [script, folder, 'new']))) continue;
        met.push(fault);
        const whole = new Set(words(folder)).size === 1 && words(folder).length === names.length;
        expect([fault, await vouchedFor(folder)]).toEqual([fault, whole]);
        const said: string[] = [];
        await clearLeftovers(folder, { say: (line) => said.push(line) });
        const after = words(folder);
        seen.add(`${after.join(' ')}|${said}`);
        expect([fault, after.length ? await vouchedFor(folder) : true]).toEqual([fault, true]);
        expect([fault, new Set(after).size]).toEqual([fault, after.length ? 1 : 0]);
        expect([fault, temporaries(folder)]).toEqual([fault, []]);
      }
      // Every rename was met, and both ends.
      for (let i = 1; i <= names.length; i++) expect(met).toContain(`SIGKILL rename ${i}`);
      const finished = 'tiny: a process ended while it replaced the files; the rest is replaced now';
      expect(seen).toContain(`new new new new|${finished}`);
      if (before)
        expect([...seen].some((end) => end.startsWith('old old old old|tiny: its new files'))).toBe(true);
      else expect(seen).toContain('|');
    },
  );

  it('is told where the rest is lost, and by its sheet', async () => {
    const folder = await folderWith('old');
    expect(await killedBy('SIGKILL rename 3', [script, folder, 'new'])).toBe(true);
    rmSync(join(folder, temporaries(folder).find((name) => name.includes('html'))!));
    const said: string[] = [];
    await clearLeftovers(folder, { say: (line) => said.push(line) });
    expect(said).toEqual([
      'tiny: a process ended while it replaced the files, and tiny.sheet.html cannot be had any more: make the set again',
    ]);
    expect(await vouchedFor(folder)).toBe(false);
    expect(temporaries(folder)).toEqual([]);
  });

  it('is not finished over a newer one', async () => {
    const folder = await folderWith('old');
    expect(await killedBy('SIGKILL rename 3', [script, folder, 'new'])).toBe(true);
    const left = temporaries(folder).map((name) => [name, readFileSync(join(folder, name))] as const);
    await write(folder, 'newer');
    // As if they had not been cleared: of a machine that cannot be asked.
    for (const [name, bytes] of left) writeFileSync(join(folder, name), bytes);
    await clearLeftovers(folder);
    expect(words(folder)).toEqual(Array(4).fill('newer'));
    expect(temporaries(folder)).toEqual([]);
  });

  it('of a process that cannot be known, is left alone for a day', async () => {
    const folder = await folderWith('old');
    expect(await killedBy('SIGKILL rename 3', [script, folder, 'new'])).toBe(true);
    const elsewhere = temporaries(folder).map((name) => {
      const other = name.replace(/[0-9a-z]{8}(?=(-[0-9a-z]+){4}\.part$)/, '0elsewhe');
      renameSync(join(folder, name), join(folder, other));
      return other;
    });
    await clearLeftovers(folder);
    expect(temporaries(folder).sort()).toEqual(elsewhere.sort());
    expect(words(folder)).toEqual(['new', 'new', 'old', 'old']);
    const yesterday = Date.now() / 1000 - 25 * 3600;
    utimesSync(join(folder, elsewhere[0]), yesterday, yesterday);
    await clearLeftovers(folder);
    // One of them is younger: they are written one after the other.
    expect(temporaries(folder).sort()).toEqual(elsewhere.sort());
    for (const name of elsewhere) utimesSync(join(folder, name), yesterday, yesterday);
    await clearLeftovers(folder);
    expect(words(folder)).toEqual(Array(4).fill('new'));
    expect(temporaries(folder)).toEqual([]);
  });
});

describe('files beside a sheet', () => {
  it('that are not its own are told, before they are replaced and where they stay', async () => {
    const folder = await folderWith('old');
    const said: string[] = [];
    await write(folder, 'same', (line) => said.push(line));
    expect(said).toEqual([]);
    writeFileSync(join(folder, 'tiny.svg'), 'drawn by hand');
    writeFileSync(join(folder, 'tiny.3mf'), 'of another time');
    await write(folder, 'new', (line) => said.push(line));
    expect(said).toEqual([
      `${join(folder, 'tiny.svg')} was not the file that tiny.sheet.json beside it speaks of; it is replaced`,
      `${join(folder, 'tiny.3mf')} stays from before: tiny.sheet.json does not speak of it`,
    ]);
  });
});
