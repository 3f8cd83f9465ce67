// Disks, folders and terminals that do not do what a job needs.
import { execFile, execFileSync, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { markText, thisProcess } from '../../lib/write/processMark.js';
import { killedBy, tellsProcesses } from '../write/faults.js';
import { command, folderWith, run } from './command.js';
import { mounted, NO_MOUNT } from './mounted.js';

const asRoot = process.getuid?.() === 0;
const idler = `name: idler
kind: gear
module: 1.5
faceWidth: 6
helix: { form: spur }
gear: { teeth: 8 }
tolerance: 0.05
variants: { fit.gap: [0.2, 0.25, 0.3] }
`;
const words = ['batch', 'set.yaml', '--out', 'out', '--format', 'stl', '--picture-size', '32x24'];
const batch = (folder: string, ...more: string[]) => run(folder, ...words, '--jobs', '1', ...more);
const plan = (folder: string, ...more: string[]) =>
  run(
    folder,
    'plan',
    '--planets',
    '5',
    '--module',
    '1.5',
    '--ring-teeth',
    '45',
    '--write',
    'out/my.yaml',
    ...more,
  );

describe('where the disk does not allow it', () => {
  it('a full disk: exit 2, a clear line, what was made stays, and room lets it finish', async ({ skip }) => {
    const folder = folderWith({ 'set.yaml': idler });
    const out = join(folder, 'out');
    const disk = mounted(out, 'size=200k');
    if (!disk) return skip(NO_MOUNT);
    try {
      const { status, stdout, stderr } = await batch(folder);
      expect(stderr).toBe(
        [
          '1/3 made idler_gap-0.2',
          '1 of 3 variants are done; the same command goes on from there',
          'out: out: cannot be written: the disk is full',
        ]
          .map((line) => `cogweave: ${line}\n`)
          .join(''),
      );
      expect([status, stdout]).toEqual([2, '']);
      expect(readdirSync(out).filter((name) => name.endsWith('.part'))).toEqual([]);
      const page = readFileSync(join(out, 'idler_gap-0.2.sheet.html'), 'utf8');
      expect(page).toMatch(/<\/html>\n$/);
      fill(out);
      const full = await plan(folder);
      expect([full.status, full.stdout, full.stderr]).toEqual([
        2,
        '',
        'cogweave: write: out: cannot be written: the disk is full\n',
      ]);
      expect(readdirSync(out).filter((name) => name.includes('my.yaml'))).toEqual([]);
      // What ends one worker ends the other, and is said once.
      const two = await run(folder, ...words, '--jobs', '2');
      expect([two.status, two.stdout, two.stderr.split(/(?<=\n)/).at(-1)]).toEqual([
        2,
        '',
        'cogweave: out: out: cannot be written: the disk is full\n',
      ]);
      expect(two.stderr).not.toMatch(/internal|refused/);
      disk.remount('size=20m');
      expect(JSON.parse((await batch(folder, '--json')).stdout)).toMatchObject({ made: 2, kept: 1 });
      disk.remount('ro');
      const [frozen, planned] = await Promise.all([batch(folder), plan(folder)]);
      expect([frozen.status, frozen.stderr]).toEqual([
        2,
        'cogweave: out: out: cannot be written: the file system is read-only\n',
      ]);
      expect([planned.status, planned.stdout, planned.stderr]).toEqual([
        2,
        '',
        'cogweave: write: out: cannot be written: the file system is read-only\n',
      ]);
    } finally {
      disk.unmount();
    }
  });

  /** Uses up what room is left. */
  function fill(out: string): void {
    try {
      for (let i = 0; ; i++) writeFileSync(join(out, `filler-${i}`), new Uint8Array(4096));
    } catch (error) {
      expect(error).toMatchObject({ code: 'ENOSPC' });
    }
  }

  it.skipIf(asRoot)('a read-only folder (left out for root, whom no folder stops)', async () => {
    const folder = folderWith({ 'set.yaml': idler });
    mkdirSync(join(folder, 'out'));
    chmodSync(join(folder, 'out'), 0o500);
    const runs = await Promise.all([batch(folder), plan(folder)]);
    expect(runs.map(({ status, stderr }) => [status, stderr])).toEqual([
      [2, 'cogweave: out: out: cannot be written: permission denied\n'],
      [2, 'cogweave: write: out: cannot be written: permission denied\n'],
    ]);
  });

  it('a file or folder in the way: exit 2, one line', async () => {
    const folder = folderWith({ 'set.yaml': idler, out: '' });
    const { status, stderr } = await batch(folder);
    expect([status, stderr]).toEqual([2, 'cogweave: out: out: is a file, not a folder\n']);
  });

  it('a folder that goes away in the middle: exit 2, a clear line, and the next run makes it whole', async () => {
    const folder = folderWith({ 'set.yaml': idler });
    const child = spawn(process.execPath, [command, ...words, '--jobs', '1'], { cwd: folder });
    let said = '';
    let removed = false;
    child.stderr.on('data', (data) => {
      said += data;
      if (removed || !/^cogweave: 1\/3/m.test(said)) return;
      rmSync(join(folder, 'out'), { recursive: true });
      removed = true;
    });
    const status = await new Promise((resolve) => child.on('close', resolve));
    // It may go away while a file is being written, or between two.
    expect(said).toMatch(
      /^cogweave: out: out: (cannot be written: there is no such file or folder|files were removed while the batch ran: idler_gap-0.2; the same command makes them again)\n$/m,
    );
    expect(said).not.toMatch(/^\s+at |internal/m);
    expect(status).toBe(2);
    expect(existsSync(join(folder, 'out', 'index.html'))).toBe(false);
    const again = await batch(folder, '--json');
    const { made, kept } = JSON.parse(again.stdout);
    expect([again.status, made + kept]).toEqual([0, 3]);
    expect(made).toBeGreaterThan(0);
  });
});

it.skipIf(!tellsProcesses)(
  'killed while it writes, what it left goes with the next file that anyone writes there, and nothing else',
  async () => {
    const folder = folderWith({ 'set.yaml': idler.replace(/variants.*/, '') });
    const out = join(folder, 'out');
    const left = () => (existsSync(out) ? readdirSync(out).filter((name) => name.endsWith('.part')) : []);
    const child = spawn(process.execPath, [command, 'make', 'set.yaml', '--out', 'out'], { cwd: folder });
    const closed = new Promise((resolve) => child.on('close', resolve));
    const poll = setInterval(() => left().length && child.kill('SIGKILL'), 1);
    await closed;
    clearInterval(poll);
    expect(child.signalCode).toBe('SIGKILL');
    const [half] = left();
    expect(half).toContain(`-${child.pid}-`);
    // Of a process that still runs, of another machine a moment ago, and of somebody else's making.
    const own = /[0-9a-z]+-\d+-[0-9a-z]+-[0-9a-z]+(?=-[0-9a-z]+\.part$)/;
    const running = half.replace(own, markText({ ...thisProcess, mark: 'abcdef' }));
    const elsewhere = half.replace(own, markText({ ...thisProcess, place: 'elsewher' }));
    for (const name of [running, elsewhere, '.mine.part']) writeFileSync(join(out, name), '');
    expect((await plan(folder)).status).toBe(0);
    expect(left().sort()).toEqual([running, elsewhere, '.mine.part'].sort());
    expect(existsSync(join(out, 'my.yaml'))).toBe(true);
  },
);

it.skipIf(!tellsProcesses)(
  'killed between two files that it replaces, the rest is replaced by the next, and foreign files are told',
  async () => {
    const one = idler.replace(/variants.*/, '');
    const folder = folderWith({ 'set.yaml': one, 'other.yaml': one.replace('faceWidth: 6', 'faceWidth: 7') });
    const out = join(folder, 'out');
    const make = ['make', 'set.yaml', '--out', 'out', '--format', 'stl'];
    expect((await run(folder, ...make)).status).toBe(0);
    const words = ['make', 'other.yaml', '--out', 'out', '--format', 'stl'];
    expect(await killedBy('SIGKILL rename 2', [command, ...words], folder)).toBe(true);
    const next = await plan(folder);
    expect([next.status, next.stderr]).toEqual([
      0,
      'cogweave: idler: a process ended while it replaced the files; the rest is replaced now\n',
    ]);
    expect(readdirSync(out).sort()).toEqual([
      'idler.sheet.html',
      'idler.sheet.json',
      'idler.stl',
      'idler.svg',
      'my.yaml',
    ]);
    const sheet = JSON.parse(readFileSync(join(out, 'idler.sheet.json'), 'utf8'));
    expect(sheet.resolved.faceWidth).toBe(7);
    for (const [name, digest] of Object.entries(sheet.digests))
      expect(
        createHash('sha256')
          .update(readFileSync(join(out, name)))
          .digest('hex'),
        name,
      ).toBe(digest);
    // Somebody takes the drawing of another set for it.
    writeFileSync(join(out, 'idler.svg'), '<svg/>');
    const add = ['trial', 'log.yaml', 'add', '--outcome', 'free', '--sheet', 'out/idler.sheet.json'];
    const [added, again] = [await run(folder, ...add), await run(folder, ...make)];
    expect([added.status, added.stderr]).toEqual([
      0,
      'cogweave: out/idler.svg is not the file that out/idler.sheet.json speaks of; was it printed from another?\n',
    ]);
    expect([again.status, again.stderr]).toEqual([
      0,
      'cogweave: out/idler.svg was not the file that idler.sheet.json beside it speaks of; it is replaced\n',
    ]);
  },
);

/** Whether util-linux's `script`, which runs a command on a terminal, is here. */
const script = (() => {
  try {
    return /util-linux/.test(execFileSync('script', ['--version'], { encoding: 'utf8' }));
  } catch {
    return false;
  }
})();
const noScript = script ? '' : '(left out: needs script of util-linux for a terminal)';

/** Sequences that colour, and all that move or clear. */
const ESCAPE = String.fromCharCode(27);
const COLOUR = new RegExp(`${ESCAPE}\\[[\\d;]*m`);
const SEQUENCE = new RegExp(`${ESCAPE}(\\[\\??[\\d;]*[A-Za-ln-z]|[78])`, 'g');

describe.skipIf(!script)(`on a terminal ${noScript}`, () => {
  it.each([20, 60])('of %d columns its bar stays in one line, without colours', async (columns) => {
    const folder = folderWith({ 'set.yaml': idler });
    const line = `stty cols ${columns} rows 24; exec ${[process.execPath, command, ...words].map((w) => `'${w}'`).join(' ')}`;
    const output = await new Promise<string>((resolve, reject) => {
      const child = execFile(
        'script',
        ['-qec', line, '/dev/null'],
        { cwd: folder, env: { ...process.env, NO_COLOR: '1', TERM: 'xterm', SHELL: '/bin/sh' } },
        (error, stdout) => (error ? reject(error) : resolve(stdout)),
      );
      child.stdin?.end();
    });
    const { bar, rest } = split(output);
    expect(output).not.toMatch(COLOUR);
    expect(bar.length).toBeGreaterThan(1);
    for (const shown of bar) expect(shown.length, shown).toBeLessThanOrEqual(columns);
    expect(bar.at(-1)).toMatch(columns > 50 ? /^#+ 3\/3, 0 refused/ : /^3\/3/);
    expect(rest).toBe(
      `3 variants: 3 made, 0 kept, 0 refused\n${['summary.csv', 'summary.json', 'index.html'].map((name) => `wrote out/${name}\n`).join('')}`,
    );
  });

  /** What the bar showed, one after the other in the same line, and the lines that follow. */
  function split(output: string): { bar: string[]; rest: string } {
    const plain = output.replace(SEQUENCE, '\r');
    const at = plain.indexOf('3 variants:');
    const bar = plain
      .slice(0, at)
      .split(/[\r\n]+/)
      .filter(Boolean);
    return { bar, rest: plain.slice(at).replaceAll('\r', '') };
  }
});
