// Signals and limits of the system: the right exit status, one line, nothing left.
import { execFile, execFileSync, spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { startWith } from '../write/faults.js';
import { command, folderWith } from './command.js';

const idler =
  'kind: gear\nmodule: 1.5\nfaceWidth: 3\nhelix: { form: spur }\ngear: { teeth: 8 }\ntolerance: 0.2\n';
const variants = 'variants: { fit.gap: [0.2, 0.25, 0.3] }\n';
const make = ['make', 'idler.yaml', '--out', 'out'];
const batch = ['batch', 'set.yaml', '--out', 'out', '--format', 'stl', '--picture-size', '32x24'];
const add = ['trial', 'log.yaml', 'add', '--gap', '0.2', '--outcome', 'free'];
const files = { 'idler.yaml': idler, 'set.yaml': `${idler}${variants}` };

describe.concurrent('a signal', () => {
  it.each<[NodeJS.Signals, number, string, string[]]>([
    ['SIGTERM', 143, 'open 3', make],
    ['SIGINT', 130, 'open 3', make],
    ['SIGTERM', 143, 'link 1', add],
  ])('%s gives %d: at %s of %j nothing is left', async (signal, status, at, words) => {
    const folder = folderWith(files);
    const child = startWith(`${signal} ${at}`, [command, ...words], { cwd: folder });
    let said = '';
    child.stderr!.on('data', (data) => {
      said += data;
    });
    expect(await new Promise((resolve) => child.on('close', resolve)), said).toBe(status);
    expect(said).toBe('cogweave: interrupted: nothing written\n');
    expect(readdirSync(folder).sort()).toEqual(Object.keys(files).sort());
  });

  it('SIGTERM gives 143 of a batch too, which says how to go on', async () => {
    const folder = folderWith(files);
    const child = spawn(process.execPath, [command, ...batch, '--jobs', '1'], { cwd: folder });
    let said = '';
    child.stderr.on('data', (data) => {
      said += data;
      if (!child.killed && /^cogweave: 1\/3/m.test(said)) child.kill('SIGTERM');
    });
    expect(await new Promise((resolve) => child.on('close', resolve)), said).toBe(143);
    expect(said).toMatch(/are done; the same command goes on from there\ncogweave: interrupted\n$/);
    const left = readdirSync(folder, { recursive: true }).filter((name) => String(name).endsWith('.part'));
    expect(left).toEqual([]);
  });
});

/** Whether the shell can lower how many files may be open. */
const limits = (() => {
  try {
    execFileSync('sh', ['-c', 'ulimit -n 30 && exec true']);
    return true;
  } catch {
    return false;
  }
})();

describe.skipIf(!limits).concurrent('too few files that may be open at once', () => {
  const tried = (cwd: string, limit: number, words: string[]) =>
    new Promise<{ status: unknown; stderr: string }>((resolve) =>
      execFile(
        'sh',
        ['-c', `ulimit -n ${limit} && exec "$@"`, 'sh', process.execPath, command, ...words],
        { cwd },
        (error, _, stderr) => resolve({ status: error ? (error.code ?? error.signal) : 0, stderr }),
      ),
    );
  const line = 'cogweave: system: too few files may be open at once; raise the limit (ulimit -n 1024)\n';

  // Below some twenty Node itself does not start.
  it.each([
    [24, make],
    [32, add],
    [40, make],
    [40, [...batch, '--jobs', '2']],
  ])('%d do not do for %j: exit 2, one line', async (limit, words) => {
    expect(await tried(folderWith(files), limit, words)).toEqual({ status: 2, stderr: line });
  });

  it.each([100, 150, 200])(
    '%d may do for one worker and not for two: all is made, or the reason is said',
    async (limit) => {
      const { status, stderr } = await tried(folderWith(files), limit, [...batch, '--jobs', '2']);
      const last = stderr.split(/(?<=\n)/).at(-1);
      if (status === 0) expect(last).toMatch(/^cogweave: 3\/3 made /);
      else expect([status, last]).toEqual([2, line]);
      expect(stderr).not.toMatch(/internal|^\s+at |node:/m);
    },
  );
});
