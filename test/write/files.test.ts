import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Refusal } from '../../lib/refusal.js';
import { checkFolder, type OutputFile, writeFiles } from '../../lib/write/files.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'cogweave-files-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const bytes = (text: string) => new TextEncoder().encode(text);
const file = (name: string, ...pieces: string[]): OutputFile => ({ name, chunks: () => pieces.map(bytes) });
const broken: OutputFile = {
  name: 'broken',
  *chunks() {
    yield bytes('half');
    throw new Error('no more');
  },
};
const content = () =>
  Object.fromEntries(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), 'utf8')]));

describe('writing files', () => {
  it('joins the pieces, replaces earlier files and leaves others alone', async () => {
    writeFileSync(join(folder, 'a'), 'earlier');
    writeFileSync(join(folder, 'c'), 'other');
    const paths = await writeFiles(folder, [file('a', 'one', ' two'), file('b')]);
    expect(paths).toEqual([join(folder, 'a'), join(folder, 'b')]);
    expect(content()).toEqual({ a: 'one two', b: '', c: 'other' });
  });

  it('makes the folder, with those above it', async () => {
    await writeFiles(join(folder, 'x', 'y'), [file('a', 'one')]);
    expect(readFileSync(join(folder, 'x/y/a'), 'utf8')).toBe('one');
  });

  it('leaves earlier files and no others when a file fails half way', async () => {
    writeFileSync(join(folder, 'a'), 'earlier');
    await expect(writeFiles(folder, [file('a', 'new'), broken])).rejects.toThrow('no more');
    expect(content()).toEqual({ a: 'earlier' });
  });

  it('takes back the folders it made, but none that was there', async () => {
    mkdirSync(join(folder, 'x'));
    await expect(writeFiles(join(folder, 'x', 'y', 'z'), [broken])).rejects.toThrow('no more');
    expect(readdirSync(folder, { recursive: true })).toEqual(['x']);
  });

  it('leaves everything as it was when it is stopped', async () => {
    const stop = new AbortController();
    const slow: OutputFile = {
      name: 'slow',
      *chunks() {
        yield bytes('half');
        stop.abort();
        yield bytes('rest');
      },
    };
    await expect(writeFiles(folder, [file('a', 'one'), slow], { signal: stop.signal })).rejects.toThrow();
    expect(content()).toEqual({});
  });

  it('replaces no file while another name is taken by a folder', async () => {
    writeFileSync(join(folder, 'a'), 'earlier');
    mkdirSync(join(folder, 'b'));
    await expect(writeFiles(folder, [file('a', 'new'), file('b', 'new')])).rejects.toThrow(Refusal);
    expect(readdirSync(folder)).toEqual(['a', 'b']);
    expect(readFileSync(join(folder, 'a'), 'utf8')).toBe('earlier');
  });

  it('replaces a link itself, not what it points to', async () => {
    writeFileSync(join(folder, 'kept'), 'kept');
    symlinkSync(join(folder, 'kept'), join(folder, 'a'));
    await writeFiles(folder, [file('a', 'new')]);
    expect(content()).toEqual({ a: 'new', kept: 'kept' });
  });

  it('lets two writers make one folder', async () => {
    const shared = join(folder, 'x', 'y');
    await Promise.all(['a', 'b', 'c'].map((name) => writeFiles(shared, [file(name, name)])));
    expect(readdirSync(shared).sort()).toEqual(['a', 'b', 'c']);
  });
});

describe('checking a folder', () => {
  it('accepts one that is there and one that can be made, and makes nothing', async () => {
    await checkFolder(folder);
    await checkFolder(join(folder, 'x', 'y'));
    expect(readdirSync(folder)).toEqual([]);
  });

  it.each(['a', 'a/x', 'a/x/y'])('refuses %s where a is a file', async (path) => {
    writeFileSync(join(folder, 'a'), '');
    await expect(checkFolder(join(folder, path))).rejects.toMatchObject({
      parameter: 'out',
      value: join(folder, path),
    });
  });
});
