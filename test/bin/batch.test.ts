import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { command, folderWith, run, spinner } from './command.js';

/** Three variants that can be made and one that cannot, on a set that takes a moment. */
const quick = spinner
  .replace('faceWidth: 5', 'faceWidth: 3')
  .replace('0.03', '0.1')
  .replace('count: 3', 'count: 2');
const file = `${quick}variants: { module: [1.25, 1.5], fit.gap: [0.2, 0.25] }\n`;
const names = ['1.25_gap-0.2', '1.25_gap-0.25', '1.5_gap-0.2', '1.5_gap-0.25'].map(
  (n) => `spinner_module-${n}`,
);
const endings = ['3mf', 'sheet.html', 'sheet.json', 'stl', 'svg'];
const summary = ['index.html', 'summary.csv', 'summary.json'];
const whole = [
  ...names.flatMap((name) => [...endings.map((e) => `${name}.${e}`), `records/${name}.json`]),
  ...summary,
  'records',
].sort();

const batch = (folder: string, ...words: string[]) =>
  run(folder, 'batch', 'set.yaml', '--out', 'out', ...words);
const listing = (folder: string) =>
  (readdirSync(join(folder, 'out'), { recursive: true }) as string[]).map(String).sort();
const bytesIn = (folder: string) =>
  Object.fromEntries(
    listing(folder)
      .filter((name) => name !== 'records')
      .map((name) => [name, readFileSync(join(folder, 'out', name)).toString('base64')]),
  );

/** One whole batch, made once: what every other way of making it is held against. */
const reference = (async () => {
  const folder = folderWith({ 'set.yaml': file });
  const { status, stdout, stderr } = await batch(folder, '--jobs', '1', '--json');
  return { folder, status, stdout, stderr };
})();

describe('batch', () => {
  it('makes every variant, says so, and keeps them the next time', async () => {
    const { folder, status, stdout, stderr } = await reference;
    expect(status, stderr).toBe(0);
    const { variants, ...counts } = JSON.parse(stdout);
    expect(counts).toEqual({ made: 4, kept: 0, refused: 0 });
    expect(variants.map(({ name }: { name: string }) => name)).toEqual(names);
    for (const { files, status: one, refusal } of variants) {
      expect([one, refusal]).toEqual(['made', null]);
      for (const path of files) expect(existsSync(join(folder, path))).toBe(true);
    }
    expect(listing(folder)).toEqual(whole);
    expect(stderr.trimEnd().split('\n').length).toBe(4);

    const before = bytesIn(folder);
    const again = JSON.parse((await batch(folder, '--json')).stdout);
    expect([again.made, again.kept]).toEqual([0, 4]);
    expect(bytesIn(folder)).toEqual(before);
  });

  it('gives the same bytes as make, and in any number of workers and shards', async () => {
    const { folder } = await reference;
    const folderOf = async (...calls: string[][]) => {
      const other = folderWith({ 'set.yaml': file });
      for (const words of calls) expect((await batch(other, ...words)).status).toBe(0);
      return bytesIn(other);
    };
    const first = bytesIn(folder);
    expect(await folderOf(['--jobs', '3'])).toEqual(first);
    expect(await folderOf(['--shard', '2/3'], ['--shard', '3/3'], ['--shard', '1/3'])).toEqual(first);
    const single = folderWith({
      'set.yaml': quick
        .replace('name: spinner', `name: ${names[3]}`)
        .replace('module: 1.5', 'module: 1.5\nfit: { gap: 0.25 }'),
    });
    await run(single, 'make', 'set.yaml', '--out', 'out');
    for (const [name, bytes] of Object.entries(bytesIn(single))) expect(bytes, name).toBe(first[name]);
  });

  it('makes again only what changed, is gone, or is not what was written', async () => {
    const folder = folderWith({ 'set.yaml': file });
    cpSync(join((await reference).folder, 'out'), join(folder, 'out'), { recursive: true });
    const before = bytesIn(folder);
    rmSync(join(folder, 'out', `${names[0]}.svg`));
    const damaged = readFileSync(join(folder, 'out', `${names[1]}.stl`));
    damaged[1000] ^= 1;
    writeFileSync(join(folder, 'out', `${names[1]}.stl`), damaged);
    writeFileSync(join(folder, 'out', 'records', `${names[2]}.json`), '{ half');
    const { variants } = JSON.parse((await batch(folder, '--json')).stdout);
    expect(variants.map(({ status }: { status: string }) => status)).toEqual([
      'made',
      'made',
      'made',
      'kept',
    ]);
    expect(bytesIn(folder)).toEqual(before);
    writeFileSync(join(folder, 'set.yaml'), file.replace('[1.25, 1.5]', '[1.5]').replace('0.1', '0.09'));
    expect(JSON.parse((await batch(folder, '--json', '--jobs', '1')).stdout)).toMatchObject({
      made: 2,
      kept: 0,
    });
  });

  it('goes on past a refused variant, and exits 1', async () => {
    const folder = folderWith({
      'set.yaml': `${quick}variants:\n- { planets.count: 5 }\n- { fit.gap: 9 }\n- { name: ../../escaped }\n- { name: kept, fit.gap: 0.2 }\n`,
    });
    const { status, stdout } = await batch(folder, '--json');
    expect(status).toBe(1);
    const { variants, ...counts } = JSON.parse(stdout);
    expect(counts).toEqual({ made: 1, kept: 0, refused: 3 });
    expect(
      variants.map(({ refusal }: { refusal: { parameter: string } | null }) => refusal?.parameter),
    ).toEqual(['assembly', 'fit.gap', 'name', undefined]);
    expect(variants[1].refusal.nearest.length).toBe(1);
    expect(readdirSync(folder).sort()).toEqual(['out', 'set.yaml']);
    const text = await batch(folder);
    expect(text.status).toBe(1);
    expect(text.stdout).toMatch(/^4 variants: 0 made, 1 kept, 3 refused\nrefused .*assembly: /);
  });

  it.each<[string, string, string[], string[]]>([
    ['no variants', quick, [], ['variants']],
    ['a fault that no variant mends', file.replace('faceWidth', 'facewidth'), [], ['facewidth']],
    ['a name that climbs out', file.replace('name: spinner', 'name: ../spinner'), [], ['name']],
    [
      'ten thousand million variants',
      `${quick}variants: { ${['module', 'faceWidth', 'fit.gap', 'sun.teeth', 'planets.teeth']
        .map((path) => `${path}: [${Array.from({ length: 100 }, (_, i) => i + 1)}]`)
        .join(', ')} }\n`,
      [],
      ['variants'],
    ],
    ['no such shard', file, ['--shard', '3/2'], ['shard']],
    ['no jobs', file, ['--jobs', '0'], ['jobs']],
    ['a tolerance of 9', file, ['--tolerance', '9'], ['tolerance']],
    ['an unknown flag', file, ['--force'], ['--force']],
  ])('%s: exit 2, a line for each problem, nothing written', async (_, content, words, parameters) => {
    const folder = folderWith({ 'set.yaml': content });
    const { status, stdout, stderr } = await batch(folder, ...words);
    expect(
      stderr
        .trimEnd()
        .split('\n')
        .map((line) => /^cogweave: ([^:]+): /.exec(line)?.[1]),
    ).toEqual(parameters);
    expect([status, stdout]).toEqual([2, '']);
    expect(readdirSync(folder)).toEqual(['set.yaml']);
  });
});

describe('batch, interrupted', () => {
  const started = (folder: string, ...words: string[]) =>
    spawn(process.execPath, [command, 'batch', 'set.yaml', '--out', 'out', ...words], { cwd: folder });
  const ended = (child: ChildProcess) =>
    new Promise<number | null>((resolve) => child.on('close', (code) => resolve(code)));

  it('killed at any moment leaves no half file, and the next run finishes the rest and cleans up', async () => {
    const folder = folderWith({ 'set.yaml': file });
    const first = bytesIn((await reference).folder);
    for (const _ of [1, 2]) {
      const child = started(folder, '--jobs', '2');
      const closed = ended(child);
      // Killed while a temporary file of its own is there.
      await new Promise<void>((resolve) => {
        const poll = setInterval(() => {
          const parts =
            existsSync(join(folder, 'out')) && listing(folder).some((n) => n.includes(`-${child.pid}-`));
          if (parts || child.exitCode !== null) {
            clearInterval(poll);
            resolve();
          }
        }, 1);
      });
      child.kill('SIGKILL');
      await closed;
      for (const [name, bytes] of Object.entries(bytesIn(folder)))
        if (!name.endsWith('.part') && name in first && !summary.includes(name))
          expect(bytes, name).toBe(first[name]);
    }
    expect((await batch(folder)).status).toBe(0);
    expect(bytesIn(folder)).toEqual(first);
  });

  it('stopped by hand ends soon, says how to go on, and takes temporary files away', async () => {
    const folder = folderWith({ 'set.yaml': file });
    const child = started(folder, '--jobs', '1');
    let said = '';
    child.stderr.on('data', (data) => {
      said += data;
      // A second signal would end it at once, as it should.
      if (!child.killed && /^cogweave: 1\/4/m.test(said)) child.kill('SIGINT');
    });
    expect(await ended(child)).toBe(130);
    expect(said).toMatch(
      /of 4 variants are done; the same command goes on from there\ncogweave: interrupted\n$/,
    );
    expect(listing(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('finishes though whoever reads its progress goes away', async () => {
    const folder = folderWith({ 'set.yaml': file });
    const child = started(folder);
    child.stderr.once('data', () => child.stderr.destroy());
    child.stdout.destroy();
    expect(await ended(child)).toBe(0);
    expect(listing(folder)).toEqual(whole);
  });

  it('two runs into one folder at once both end well', async () => {
    const folder = folderWith({ 'set.yaml': file });
    const runs = await Promise.all([
      batch(folder, '--json', '--jobs', '1'),
      batch(folder, '--json', '--jobs', '1'),
    ]);
    expect(runs.map(({ status }) => status)).toEqual([0, 0]);
    expect(bytesIn(folder)).toEqual(bytesIn((await reference).folder));
  });
});

describe('batch, where the disk does not allow it', () => {
  const asRoot = process.getuid?.() === 0;
  /** Tells whether file systems can be mounted here; containers often forbid it even to root. */
  const mounted = (folder: string, size: string) => {
    mkdirSync(join(folder, 'out'));
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs', join(folder, 'out')], {
        stdio: 'ignore',
      });
      return true;
    } catch {
      return false;
    }
  };
  const unmount = (folder: string) => execFileSync('umount', [join(folder, 'out')]);

  it('a full disk: exit 2, a clear line, what was made stays, and room lets it finish', async ({ skip }) => {
    const folder = folderWith({ 'set.yaml': file });
    if (!asRoot || !mounted(folder, '700k')) return skip('needs the right to mount a small file system');
    try {
      const { status, stdout, stderr } = await batch(folder, '--jobs', '1');
      expect(stderr).toMatch(/^cogweave: out: out: cannot be written: the disk is full$/m);
      expect(stderr).toMatch(/1 of 4 variants are done; the same command goes on from there/);
      expect([status, stdout]).toEqual([2, '']);
      expect(listing(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
      expect(existsSync(join(folder, 'out', `${names[0]}.sheet.html`))).toBe(true);
      const make = await run(folder, 'make', 'set.yaml', '--out', 'out');
      expect([make.status, make.stdout]).toEqual([2, '']);
      expect(make.stderr).toMatch(/^cogweave: out: out: cannot be written: the disk is full\n$/);
      execFileSync('mount', ['-o', 'remount,size=20m', join(folder, 'out')]);
      expect(JSON.parse((await batch(folder, '--json')).stdout)).toMatchObject({ made: 3, kept: 1 });
      execFileSync('mount', ['-o', 'remount,ro', join(folder, 'out')]);
      const frozen = await batch(folder);
      expect(frozen.status).toBe(2);
      expect(frozen.stderr).toMatch(
        /^cogweave: out: out: cannot be written: the file system is read-only\n$/,
      );
    } finally {
      unmount(folder);
    }
  });

  it.skipIf(asRoot)('a read-only folder (skipped for root, whom nothing is read-only)', async () => {
    const folder = folderWith({ 'set.yaml': file });
    mkdirSync(join(folder, 'out'));
    chmodSync(join(folder, 'out'), 0o500);
    const { status, stderr } = await batch(folder);
    expect(status).toBe(2);
    expect(stderr).toMatch(/^cogweave: out: out: cannot be written: permission denied\n$/);
  });

  it('a file or folder in the way: exit 2, one line', async () => {
    const folder = folderWith({ 'set.yaml': file, out: '' });
    const { status, stderr } = await batch(folder);
    expect([status, stderr]).toEqual([2, 'cogweave: out: out: is a file, not a folder\n']);
  });

  it('odd names of files and folders', async () => {
    const name = `Tisch ${'ü'.repeat(40)} 卓`;
    const folder = folderWith({
      [`${name}.yaml`]: file.replace('name: spinner\n', '').replace('[0.2, 0.25]', '[0.2]'),
    });
    symlinkSync('real out', join(folder, 'li nk'));
    mkdirSync(join(folder, 'real out'));
    const { status, stdout } = await run(folder, 'batch', `${name}.yaml`, '--out', 'li nk/a  b', '--json');
    expect(status).toBe(0);
    for (const { files } of JSON.parse(stdout).variants)
      for (const path of files) expect(existsSync(join(folder, path)), path).toBe(true);
  });
});
