// Machines that share a folder and a host name: two process namespaces stand for them.
import { type ChildProcess, execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, utimesSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { startWith } from './faults.js';

/** A process namespace with the same host name as any other such, its first process this very command. */
const apart = [
  'unshare',
  '--pid',
  '--fork',
  '--kill-child',
  '--mount-proc',
  '--uts',
  'sh',
  '-c',
  'hostname node && exec "$@"',
  'sh',
];
const allowed = (() => {
  try {
    execFileSync(apart[0], [...apart.slice(1), 'true'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();
const why = allowed ? '' : ' (left out: needs the right to make process namespaces)';

const root = mkdtempSync(join(tmpdir(), 'cogweave-apart-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
const script = join(import.meta.dirname, 'writeTiny.mjs');
const started: ChildProcess[] = [];
afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL');
});

/** Writes the set `one` so that it stands still at a step, in a namespace of its own or not. */
async function standingStill(folder: string, fault: string, before: string[]): Promise<ChildProcess> {
  const child = startWith(fault, [script, folder, 'word', 'one'], { before });
  started.push(child);
  await new Promise<void>((resolve, reject) => {
    child.stdout!.once('data', () => resolve());
    child.once('close', () => reject(new Error('ended before it stood still')));
  });
  return child;
}

/** Writes the set `two` into the same folder. */
const writing = (folder: string, before: string[]) => {
  const [first, ...rest] = [...before, process.execPath, script, folder, 'word', 'two'];
  execFileSync(first, rest, { stdio: 'ignore' });
};
const ended = (child: ChildProcess) =>
  new Promise((resolve) => {
    child.once('close', resolve);
    child.kill('SIGKILL');
  });

describe.skipIf(!allowed)(`machines with one host name${why}`, () => {
  it.each<[string, string[], string[]]>([
    ['in two namespaces, both process 1', apart, apart],
    ['one inside, one outside', apart, []],
    ['one outside, one inside', [], apart],
  ])(
    '%s: neither removes what the other is writing, nor what it left before a day has gone by',
    async (_, mine, other) => {
      const folder = mkdtempSync(join(root, 'shared-'));
      const left = () => readdirSync(folder).filter((name) => name.endsWith('.part'));
      const child = await standingStill(folder, 'stall rename 3', mine);
      const half = left();
      expect(half.length).toBe(2);
      writing(folder, other);
      expect(left()).toEqual(half);
      await ended(child);
      writing(folder, other);
      expect(left()).toEqual(half);
      const yesterday = Date.now() / 1000 - 25 * 3600;
      for (const name of half) utimesSync(join(folder, name), yesterday, yesterday);
      expect(readdirSync(folder)).not.toContain('one.sheet.json');
      writing(folder, other);
      expect(left()).toEqual([]);
      // It had begun to replace: whoever comes next has finished that.
      expect(readdirSync(folder)).toContain('one.sheet.json');
    },
  );
});
