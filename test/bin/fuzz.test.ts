import { execFile } from 'node:child_process';
import { appendFileSync, readFileSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from './command.js';

/** Files of the seed that hold every outcome, in a short time. */
const COUNT = 140;
const script = join(import.meta.dirname, '..', 'fuzz', 'fuzz.mjs');

/** Runs the search for faults as a process of its own; it starts `manifold-3d` for the bodies it builds. */
const fuzz = (folder: string, count: number) =>
  new Promise<{ status: number; result: Record<string, unknown> }>((resolve) => {
    const words = [script, '--quick', '--seed', '7', '--count', String(count), '--report', 'report.jsonl'];
    execFile(process.execPath, words, { cwd: folder }, (error, stdout) =>
      resolve({ status: error ? 1 : 0, result: JSON.parse(stdout) }),
    );
  });

describe('random parameter files', () => {
  it('are proved, or refused with offers that work; a broken off run is gone on with', async () => {
    const folder = folderWith({});
    const report = join(folder, 'report.jsonl');
    await fuzz(folder, 20);
    const first = readFileSync(report, 'utf8').split('\n');
    truncateSync(report, Buffer.byteLength(first.slice(0, 10).join('\n')));
    appendFileSync(report, '\n{"seed":7,"ind');
    const { status, result } = await fuzz(folder, COUNT);
    const entries = readFileSync(report, 'utf8')
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(entries.filter(({ faults }) => faults.length)).toEqual([]);
    expect([status, result.found, entries.length]).toEqual([0, 0, COUNT]);
    expect(new Set(entries.map(({ index }) => index)).size).toBe(COUNT);
    const outcomes = new Set(entries.map(({ outcome }) => outcome));
    expect(outcomes).toEqual(new Set(['made', 'works', 'refused']));
  });
});
