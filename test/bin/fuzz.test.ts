import { execFile } from 'node:child_process';
import { appendFileSync, readFileSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MOST_MEGABYTES, MOST_SECONDS, withExcess } from '../fuzz/examiners.mjs';
import { folderWith } from './command.js';

/** Files of the seed that hold every outcome, in a short time. */
const COUNT = 70;
const script = join(import.meta.dirname, '..', 'fuzz', 'fuzz.mjs');

/** Runs the search for faults as a process of its own; it starts `manifold-3d` for the bodies it builds. */
const fuzz = (folder: string, count: number) =>
  new Promise<{ status: number; result: Record<string, unknown> }>((resolve) => {
    const words = [script, '--quick', '--seed', '48', '--count', String(count), '--report', 'report.jsonl'];
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
    appendFileSync(report, '\n{"seed":48,"ind');
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

    const counted = Object.values(result.tally as Record<string, number>);
    expect(counted.reduce((sum, each) => sum + each, 0)).toBe(COUNT);
    expect(result.involved).toBe(entries.filter(({ involved }) => involved).length);
    // The slowest and the largest are the file that no other exceeds.
    for (const [name, key] of [
      ['slowest', 'seconds'],
      ['largest', 'megabytes'],
    ]) {
      const { index, ...cost } = result[name] as Record<string, number>;
      expect(entries[index].cost).toEqual(cost);
      expect(Math.max(...entries.map((entry) => entry.cost?.[key] ?? 0))).toBe(cost[key]);
    }
  });

  it('that take too long or too much are found, whatever becomes of them', () => {
    const result = (seconds: number, megabytes: number) =>
      withExcess({ outcome: 'made', faults: [], cost: { seconds, megabytes } }).faults;
    expect(result(MOST_SECONDS, MOST_MEGABYTES)).toEqual([]);
    expect(result(20.01, 100)).toEqual(['takes 20.01 s: more than 20']);
    expect(result(1, 1025)).toEqual(['takes 1025 MB: more than 1024']);
  });
});
