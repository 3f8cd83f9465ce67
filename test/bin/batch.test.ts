import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
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
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { tellsProcesses } from '../write/faults.js';
import { command, folderWith, run } from './command.js';

/** The quickest there is to make: one small idler of the invented exhibit table. */
const idler = `name: idler
kind: gear
module: 1.5
faceWidth: 3
helix: { form: spur }
gear: { teeth: 8 }
tolerance: 0.2
`;
const file = `${idler}variants: { module: [1.25, 1.5], fit.gap: [0.2, 0.25] }\n`;
const two = `${idler}variants: { fit.gap: [0.2, 0.25] }\n`;
const names = ['1.25_gap-0.2', '1.25_gap-0.25', '1.5_gap-0.2', '1.5_gap-0.25'].map(
  (n) => `idler_module-${n}`,
);
const endings = ['png', 'sheet.html', 'sheet.json', 'stl', 'svg'];
const summary = ['index.html', 'summary.csv', 'summary.json'];
const whole = [
  ...names.flatMap((name) => [...endings.map((e) => `${name}.${e}`), `records/${name}.json`]),
  ...summary,
  'records',
].sort();

/** One format and a tiny picture, so that most of the time goes where it is tested. */
const light = ['--format', 'stl', '--picture-size', '32x24'];
const batch = (folder: string, ...words: string[]) =>
  run(folder, 'batch', 'set.yaml', '--out', 'out', ...light, ...words);
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
  return { folder, status, stdout, stderr, bytes: bytesIn(folder) };
})();

const started = (folder: string, ...words: string[]) =>
  spawn(process.execPath, [command, 'batch', 'set.yaml', '--out', 'out', ...light, ...words], {
    cwd: folder,
  });
const ended = (child: ChildProcess) =>
  new Promise<number | null>((resolve) => child.on('close', (code) => resolve(code)));

describe('batch', () => {
  it('makes every variant, says so, and keeps them the next time', async () => {
    const { folder, status, stdout, stderr, bytes } = await reference;
    expect(status, stderr).toBe(0);
    const { variants, ...counts } = JSON.parse(stdout);
    expect(counts).toEqual({ made: 4, kept: 0, refused: 0 });
    expect(variants.map(({ name }: { name: string }) => name)).toEqual(names);
    for (const { files, status: one, refusal } of variants) {
      expect([one, refusal, files.length]).toEqual(['made', null, endings.length]);
      for (const path of files) expect(existsSync(join(folder, path))).toBe(true);
    }
    expect(listing(folder)).toEqual(whole);
    expect(stderr).toBe(names.map((name, i) => `cogweave: ${i + 1}/4 made ${name}\n`).join(''));

    const again = JSON.parse((await batch(folder, '--json', '--jobs', '1')).stdout);
    expect([again.made, again.kept]).toEqual([0, 4]);
    expect(bytesIn(folder)).toEqual(bytes);
  });

  it('gives the same bytes as make', async () => {
    const { bytes } = await reference;
    const folder = folderWith({
      'set.yaml': `${idler.replace('name: idler', `name: ${names[3]}`)}fit: { gap: 0.25 }\n`,
    });
    await run(folder, 'make', 'set.yaml', '--out', 'out', ...light);
    const made = Object.entries(bytesIn(folder));
    expect(made.length).toBe(endings.length);
    for (const [name, content] of made) expect(content, name).toBe(bytes[name]);
  });

  it('gives the same bytes in two workers, though nobody reads what it says and its files go away', async () => {
    // The profile says what holds without it.
    const folder = folderWith({ 'set.yaml': file, 'ours.yaml': 'printer: { nozzle: 0.4 }\n' });
    const child = started(folder, '--jobs', '2', '--profile', 'ours.yaml');
    child.stderr.once('data', () => {
      child.stderr.destroy();
      for (const name of ['set.yaml', 'ours.yaml']) rmSync(join(folder, name));
    });
    child.stdout.destroy();
    expect(await ended(child)).toBe(0);
    expect(existsSync(join(folder, 'set.yaml'))).toBe(false);
    expect(bytesIn(folder)).toEqual((await reference).bytes);
  });

  it('gives the same bytes in shards that run at once', async () => {
    const folder = folderWith({ 'set.yaml': file });
    const runs = await Promise.all(
      ['2/2', '1/2'].map((shard) => batch(folder, '--json', '--jobs', '1', '--shard', shard)),
    );
    expect(runs.map(({ status }) => status)).toEqual([0, 0]);
    expect(
      runs.map(({ stdout }) => JSON.parse(stdout).variants.map(({ name }: { name: string }) => name)),
    ).toEqual([
      [names[1], names[3]],
      [names[0], names[2]],
    ]);
    expect(bytesIn(folder)).toEqual((await reference).bytes);
  });

  it('makes again only what changed, is gone, or is not what was written; a list for a mapping is the same', async () => {
    const folder = folderWith({
      'set.yaml': `${idler}variants:
- { name: ${names[0]}, module: 1.25, fit.gap: 0.2 }
- { name: ${names[1]}, module: 1.25, fit.gap: 0.25 }
- { name: ${names[2]}, module: 1.5, fit.gap: 0.2 }
- { name: ${names[3]}, module: 1.5, fit.gap: 0.26 }
- { name: same, module: 1.5, fit.gap: 0.2 }
`,
    });
    const { folder: first, bytes } = await reference;
    cpSync(join(first, 'out'), join(folder, 'out'), { recursive: true });
    rmSync(join(folder, 'out', `${names[0]}.svg`));
    const damaged = readFileSync(join(folder, 'out', `${names[1]}.stl`));
    damaged[1000] ^= 1;
    writeFileSync(join(folder, 'out', `${names[1]}.stl`), damaged);
    const { status, stdout } = await batch(folder, '--json', '--jobs', '1', '--shard', '1/1');
    expect(status).toBe(0);
    expect(JSON.parse(stdout).variants.map(({ status }: { status: string }) => status)).toEqual([
      'made',
      'made',
      'kept',
      'made',
      'made',
    ]);
    const now = bytesIn(folder);
    for (const name of names.slice(0, 3))
      for (const ending of endings) expect(now[`${name}.${ending}`]).toBe(bytes[`${name}.${ending}`]);
    expect(now[`${names[3]}.stl`]).not.toBe(bytes[`${names[3]}.stl`]);
    expect(now['same.stl']).not.toBe(undefined);
  });

  it('goes on past a refused variant, and exits 1', async () => {
    const folder = folderWith({
      'set.yaml': `${idler.replace('teeth: 8', 'teeth: 18')}variants:
- { gear.teeth: 8 }
- { fit.gap: 9 }
- { name: ../../escaped }
- { name: kept, fit.gap: 0.2 }
`,
    });
    const { status, stdout } = await batch(folder, '--json', '--jobs', '1', '--strict');
    expect(status).toBe(1);
    const { variants, ...counts } = JSON.parse(stdout);
    expect(counts).toEqual({ made: 1, kept: 0, refused: 3 });
    expect(
      variants.map(({ refusal }: { refusal: { parameter: string } | null }) => refusal?.parameter),
    ).toEqual(['undercut', 'fit.gap', 'name', undefined]);
    expect(variants[1].refusal.nearest.length).toBe(1);
    expect(readdirSync(folder).sort()).toEqual(['out', 'set.yaml']);
    const text = await batch(folder, '--jobs', '1', '--strict');
    expect(text.status).toBe(1);
    expect(text.stdout).toMatch(/^4 variants: 0 made, 1 kept, 3 refused\nrefused .*undercut: /);
  });

  it.each<[string, string, string[], string[]]>([
    ['no variants', idler, [], ['variants']],
    ['a fault that no variant mends', file.replace('faceWidth', 'facewidth'), [], ['facewidth']],
    ['a name that climbs out', file.replace('name: idler', 'name: ../idler'), [], ['name']],
    ['no jobs', file, ['--jobs', '0'], ['jobs']],
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

  it('odd names of files and folders; a picture of each, however little was asked for', async () => {
    const name = `Tisch ${'ü'.repeat(40)} 卓`;
    const folder = folderWith({
      [`${name}.yaml`]: `${idler.replace('name: idler\n', '')}variants: { fit.gap: [0.2] }\n`,
    });
    symlinkSync('real out', join(folder, 'li nk'));
    mkdirSync(join(folder, 'real out'));
    const words = [`${name}.yaml`, '--out', 'li nk/a  b', '--format', 'stl', '--json'];
    const { status, stdout } = await run(folder, 'batch', ...words);
    expect(status).toBe(0);
    const [{ files }] = JSON.parse(stdout).variants;
    for (const path of files) expect(existsSync(join(folder, path)), path).toBe(true);
    const picture = files.find((path: string) => path.endsWith('.png'));
    const { width, height } = PNG.sync.read(readFileSync(join(folder, picture)));
    expect([width, height]).toEqual([400, 300]);
  });
});

describe('batch, interrupted', () => {
  it.skipIf(!tellsProcesses)(
    'killed at any moment leaves no half file, and the next run finishes the rest and cleans up',
    async () => {
      const folder = folderWith({ 'set.yaml': file });
      const { bytes } = await reference;
      const child = started(folder, '--jobs', '2');
      const closed = ended(child);
      // Killed once something is whole, while a temporary file of its own is there.
      await new Promise<void>((resolve) => {
        const poll = setInterval(() => {
          const there = existsSync(join(folder, 'out')) ? listing(folder) : [];
          const begun =
            there.some((n) => n.includes(`-${child.pid}-`)) && there.some((n) => n.endsWith('.stl'));
          if (begun || child.exitCode !== null) {
            clearInterval(poll);
            child.kill('SIGKILL');
            resolve();
          }
        }, 1);
      });
      await closed;
      expect(child.signalCode).toBe('SIGKILL');
      for (const [name, content] of Object.entries(bytesIn(folder)))
        if (!name.endsWith('.part')) expect(content, name).toBe(bytes[name]);
      writeFileSync(join(folder, 'out', 'records', `${names[3]}.json`), '{ half');
      expect((await batch(folder, '--jobs', '1')).status).toBe(0);
      expect(bytesIn(folder)).toEqual(bytes);
    },
  );

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

  it('two runs into one folder at once both end well', async () => {
    const folder = folderWith({ 'set.yaml': two });
    const runs = await Promise.all(['1', '2'].map(() => batch(folder, '--json', '--jobs', '1')));
    expect(runs.map(({ status }) => status)).toEqual([0, 0]);
    const there = bytesIn(folder);
    expect(Object.keys(there).length).toBe(2 * (endings.length + 1) + summary.length);
    // Nothing is left half, or of two minds: each record vouches for the very bytes that lie there.
    for (const record of listing(folder).filter((name) => name.startsWith('records/')))
      for (const { name, sha256 } of JSON.parse(readFileSync(join(folder, 'out', record), 'utf8')).written)
        expect(createHash('sha256').update(Buffer.from(there[name], 'base64')).digest('hex')).toBe(sha256);
  });
});
