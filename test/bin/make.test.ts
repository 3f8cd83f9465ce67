import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { readSpec } from '../../lib/spec/readSpec.js';
import { command, folderWith, run, spinner } from './command.js';

const all = ['3mf', 'sheet.html', 'sheet.json', 'stl', 'svg'].map((ending) => `spinner.${ending}`);
/** 18 + 54 teeth leave no whole number of places for 5 planets. */
const impossible = spinner.replace('count: 3', 'count: 5');
/** Ten teeth without shift are undercut, which should not but may be. */
const undercut = spinner.replace('{ teeth: 18 }', '{ teeth: 12 }').replace('teeth: 18,', 'teeth: 15,');

describe.concurrent('make', () => {
  it('writes every file, whole, and says which', async () => {
    const folder = folderWith({ 'set.yaml': spinner });
    const { status, stdout, stderr } = await run(folder, 'make', 'set.yaml', '--out', 'a/b');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(readdirSync(join(folder, 'a/b')).sort()).toEqual(all);
    for (const file of all) expect(stdout).toContain(`wrote ${join('a/b', file)}\n`);
    const stl = readFileSync(join(folder, 'a/b/spinner.stl'));
    expect(stl.length).toBe(84 + 50 * stl.readUInt32LE(80));
    const sheet = JSON.parse(readFileSync(join(folder, 'a/b/spinner.sheet.json'), 'utf8'));
    expect(sheet.resolved).toEqual(readSpec(spinner));
    const triangles = sheet.parts.reduce(
      (sum: number, part: { count: number; triangles: number }) => sum + part.count * part.triangles,
      0,
    );
    expect(stl.readUInt32LE(80)).toBe(triangles);
  });

  it('prints one JSON document and nothing else with --json', async () => {
    const folder = folderWith({ 'set.yaml': spinner });
    const { stdout, stderr } = await run(folder, 'make', 'set.yaml', '--out', 'out', '--json');
    const { files, sheet, ...rest } = JSON.parse(stdout);
    expect(rest).toEqual({});
    expect(stderr).toBe('');
    expect(files.sort()).toEqual(all.map((file) => join('out', file)));
    expect(sheet).toEqual(JSON.parse(readFileSync(join(folder, 'out/spinner.sheet.json'), 'utf8')));
    const others = all.filter((file) => file !== 'spinner.sheet.json');
    const digest = (file: string) =>
      createHash('sha256')
        .update(readFileSync(join(folder, 'out', file)))
        .digest('hex');
    expect(sheet.digests).toEqual(Object.fromEntries(others.map((file) => [file, digest(file)])));
  });

  it('writes the same bytes again over earlier files, and only the formats asked for', async () => {
    const folder = folderWith({ 'set.yaml': spinner });
    await run(folder, 'make', 'set.yaml', '--out', 'out');
    const before = all.map((file) => readFileSync(join(folder, 'out', file)));
    writeFileSync(join(folder, 'out/spinner.3mf'), 'earlier');
    await run(folder, 'make', 'set.yaml', '--out', 'out', '--format', 'STL');
    expect(readFileSync(join(folder, 'out/spinner.3mf'), 'utf8')).toBe('earlier');
    await run(folder, 'make', 'set.yaml', '--out', 'out', '--format', '3mf, stl');
    expect(all.map((file) => readFileSync(join(folder, 'out', file)))).toEqual(before);
  });

  it('draws a picture where it is asked to, of the size that is asked for', async () => {
    const folder = folderWith({ 'set.yaml': spinner });
    const { stdout } = await run(folder, 'make', 'set.yaml', '--out', 'out', '--picture-size', '64x48');
    expect(stdout).toContain(`wrote ${join('out', 'spinner.png')}\n`);
    const { width, height } = PNG.sync.read(readFileSync(join(folder, 'out/spinner.png')));
    expect([width, height]).toEqual([64, 48]);
    const wrong = await run(folder, 'make', 'set.yaml', '--out', 'wrong', '--picture-size', '9x9999');
    expect(wrong.status).toBe(2);
    expect(wrong.stderr).toContain('nearest that works: 16x4096');
    expect(existsSync(join(folder, 'wrong'))).toBe(false);
  });

  it('is named after the file where that gives no name', async () => {
    const folder = folderWith({ 'tea corner.yaml': spinner.replace('name: spinner\n', '') });
    await run(folder, 'make', 'tea corner.yaml', '--out', '.', '--format', 'stl');
    expect(existsSync(join(folder, 'tea corner.stl'))).toBe(true);
  });

  it('a finer tolerance gives more triangles', async () => {
    const folder = folderWith({ 'set.yaml': spinner });
    await run(folder, 'make', 'set.yaml', '--out', 'a', '--format', 'stl');
    await run(folder, 'make', 'set.yaml', '--out', 'b', '--format', 'stl', '--tolerance', '0.005');
    const size = (path: string) => statSync(join(folder, path)).size;
    expect(size('b/spinner.stl')).toBeGreaterThan(1.3 * size('a/spinner.stl'));
  });

  it('a failing must: exit 1, the sheet, nothing written', async () => {
    const folder = folderWith({ 'set.yaml': impossible });
    const plain = await run(folder, 'make', 'set.yaml', '--out', 'out');
    expect(plain.status).toBe(1);
    expect(plain.stdout).toMatch(/FAILS +must +assembly/);
    expect(plain.stderr).toMatch(
      /^cogweave: refused by assembly: planets\.count .* must be whole .*Nearest sets that work.*\n$/,
    );
    const json = await run(folder, 'make', 'set.yaml', '--out', 'out', '--json');
    expect(json.status).toBe(1);
    const { files, sheet } = JSON.parse(json.stdout);
    expect(files).toEqual([]);
    expect(sheet.checks).toContainEqual(
      expect.objectContaining({ id: 'assembly', holds: false, level: 'must' }),
    );
    expect(readdirSync(folder)).toEqual(['set.yaml']);
  });

  it('--force writes all the same, and the sheet shows what fails', async () => {
    const folder = folderWith({ 'set.yaml': impossible });
    const { status, stderr } = await run(folder, 'make', 'set.yaml', '--out', 'out', '--force');
    expect(status).toBe(0);
    expect(stderr).toContain('assembly');
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(all);
    const sheet = JSON.parse(readFileSync(join(folder, 'out/spinner.sheet.json'), 'utf8'));
    expect(sheet.checks).toContainEqual(expect.objectContaining({ id: 'assembly', holds: false }));
  });

  it('a failing should stops only with --strict', async () => {
    const folder = folderWith({ 'set.yaml': undercut });
    const lenient = await run(folder, 'make', 'set.yaml', '--out', 'a', '--format', 'stl');
    expect(lenient.status).toBe(0);
    expect(lenient.stdout).toMatch(/FAILS +should +undercut/);
    const strict = await run(folder, 'make', 'set.yaml', '--out', 'b', '--strict');
    expect(strict.status).toBe(1);
    expect(existsSync(join(folder, 'b'))).toBe(false);
  });
});

describe.concurrent('inspect', () => {
  it('prints the sheet, as JSON or as text that names failing checks first', async () => {
    const folder = folderWith({ 'set.yaml': undercut });
    const json = await run(folder, 'inspect', 'set.yaml', '--json');
    expect(json.status).toBe(0);
    expect(JSON.parse(json.stdout).resolved).toEqual(readSpec(undercut));
    const text = await run(folder, 'inspect', 'set.yaml');
    const words = text.stdout.match(/^(FAILS|noted|holds) {2}/gm) ?? [];
    expect(words.length).toBe(JSON.parse(json.stdout).checks.length);
    expect(words.map((word) => word.trim()).join(' ')).toMatch(/^(FAILS ?)+(noted ?)*(holds ?)+$/);
    expect(readdirSync(folder)).toEqual(['set.yaml']);
  });

  it('exits 1 and still prints the sheet when a must fails, or a should with --strict', async () => {
    const folder = folderWith({ 'bad.yaml': impossible, 'set.yaml': undercut });
    const must = await run(folder, 'inspect', 'bad.yaml', '--json');
    expect(must.status).toBe(1);
    expect(JSON.parse(must.stdout).name).toBe('spinner');
    expect((await run(folder, 'inspect', 'set.yaml', '--json', '--strict')).status).toBe(1);
  });

  it('takes a file behind --', async () => {
    const folder = folderWith({ '-set.yaml': spinner });
    expect((await run(folder, 'inspect', '--json', '--', '-set.yaml')).status).toBe(0);
  });
});

describe('schema and help', () => {
  it('prints the JSON Schema', async () => {
    const { stdout, status } = await run('.', 'schema');
    expect(status).toBe(0);
    expect(JSON.parse(stdout).oneOf[0].properties.module).toMatchObject({
      type: 'number',
      minimum: 0.2,
      maximum: 20,
      unit: 'mm',
    });
  });

  it('explains itself', async () => {
    const { stdout, status } = await run('.', '--help');
    expect(status).toBe(0);
    for (const name of ['make', 'inspect', 'schema']) expect(stdout).toContain(`cogweave ${name}`);
  });

  it('is quiet when its reader goes away', async () => {
    const child = spawn(process.execPath, [command, 'schema'], { stdio: ['ignore', 'pipe', 'pipe'] });
    child.stdout.destroy();
    let said = '';
    child.stderr.on('data', (data) => {
      said += data;
    });
    const status = await new Promise((resolve) => child.on('close', resolve));
    expect(said).toBe('');
    expect(status).toBe(0);
  });
});
