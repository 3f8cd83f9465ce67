import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readText, textAt } from '../../lib/write/readText.js';

const folder = mkdtempSync(join(tmpdir(), 'cogweave-read-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = join(folder, 'text');
const fifo = join(folder, 'fifo');

describe('reading a file', () => {
  it('gives its text, up to a megabyte', () => {
    writeFileSync(path, 'module: 1.5\n');
    expect(textAt('file', path)).toBe('module: 1.5\n');
    writeFileSync(path, 'x'.repeat(1_000_000));
    expect(textAt('file', path)).toHaveLength(1_000_000);
    expect(textAt('file', join(folder, 'none'))).toBe(undefined);
  });

  it('refuses what has no end, is too much or no text, by the parameter that gave it', () => {
    const refused = (what: string) => expect(() => readText('sheet', what));
    refused(join(folder, 'none')).toThrow(/^sheet: .*none: cannot be read: there is no such file or folder$/);
    refused(folder).toThrow(/^sheet: .*: is a folder, not a file$/);
    truncateSync(path, 1e12);
    refused(path).toThrow(/^sheet: .*text: is more than 1 MB$/);
    writeFileSync(path, Uint8Array.of(0xc0, 0xaf));
    refused(path).toThrow(/^sheet: .*text: is not text \(UTF-8\)$/);
    if (process.platform === 'win32') return;
    for (const device of ['/dev/zero', '/dev/null', '/dev/tty', '/dev/urandom'])
      refused(device).toThrow(
        /^sheet: \/dev\/.*: (is a device, not a file|cannot be read: there is no such device.*)$/,
      );
  });

  it.skipIf(process.platform === 'win32')(
    'reads a pipe to its end, and waits for it no longer than told',
    async () => {
      execFileSync('mkfifo', [fifo]);
      expect(() => textAt('file', fifo, 100)).toThrow(/fifo: is a pipe that gave nothing for 0.1 s$/);
      const silent = spawn('sh', ['-c', 'exec 3<>"$0"; echo; exec sleep 60', fifo]);
      await new Promise((resolve) => silent.stdout.once('data', resolve));
      expect(() => textAt('file', fifo, 100)).toThrow(/gave nothing/);
      silent.kill();
      await new Promise((resolve) => silent.on('close', resolve));
      const endless = spawn('sh', ['-c', 'exec yes > "$0"', fifo]);
      expect(() => textAt('file', fifo, 5000)).toThrow(/fifo: is more than 1 MB$/);
      endless.kill();
      await new Promise((resolve) => endless.on('close', resolve));
      const slow = spawn('sh', ['-c', '(echo a; sleep 0.2; echo b) > "$0"', fifo]);
      expect(textAt('file', fifo, 5000)).toBe('a\nb\n');
      slow.kill();
    },
  );
});
