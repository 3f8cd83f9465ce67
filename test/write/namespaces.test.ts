// Machines that share a folder and a host name: two process namespaces stand for them.
import { type ChildProcess, execFileSync } from 'node:child_process';
import { readdirSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { startWith } from '../write/faults.js';
import { command, folderWith } from './command.js';

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

const idler =
  'kind: gear\nmodule: 1.5\nfaceWidth: 3\nhelix: { form: spur }\ngear: { teeth: 8 }\ntolerance: 0.2\n';
const started: ChildProcess[] = [];
afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL');
});

/** Makes `one` so that it stands still at a step of its writing, in a namespace of its own or not. */
async function standingStill(folder: string, fault: string, before: string[]): Promise<ChildProcess> {
  const child = startWith(fault, [command, 'make', 'one.yaml', '--out', 'out'], { cwd: folder, before });
  started.push(child);
  await new Promise<void>((resolve, reject) => {
    child.stdout!.once('data', () => resolve());
    child.once('close', () => reject(new Error('ended before it stood still')));
  });
  return child;
}

/** Makes `two` in the same folder to its end. */
const making = (folder: string, before: string[]) => {
  const [first, ...rest] = [...before, process.execPath, command, 'make', 'two.yaml', '--out', 'out'];
  return execFileSync(first, rest, { cwd: folder, stdio: 'ignore' });
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
      const folder = folderWith({ 'one.yaml': idler, 'two.yaml': idler });
      const out = join(folder, 'out');
      const left = () => readdirSync(out).filter((name) => name.endsWith('.part'));
      const child = await standingStill(folder, 'stall rename 3', mine);
      const writing = left();
      expect(writing.length).toBeGreaterThan(2);
      making(folder, other);
      expect(left()).toEqual(writing);
      await ended(child);
      making(folder, other);
      expect(left()).toEqual(writing);
      const yesterday = Date.now() / 1000 - 25 * 3600;
      for (const name of writing) utimesSync(join(out, name), yesterday, yesterday);
      expect(readdirSync(out)).not.toContain('one.sheet.json');
      making(folder, other);
      expect(left()).toEqual([]);
      // It had begun to replace: whoever comes next has finished that.
      expect(readdirSync(out)).toContain('one.sheet.json');
    },
  );
});
