// Every flag and word that names a file to read, given one that has no end, in a process with little memory.
import { execFile } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { command, folderWith, spinner } from './command.js';

const trials = '0.1 fused, 0.15 fused, 0.2 tight, 0.25 free, 0.3 free, 0.35 free, 0.4 loose, 0.45 loose'
  .split(', ')
  .map((entry) => entry.split(' '))
  .map(([gap, outcome]) => `  - { gap: ${gap}, outcome: ${outcome}, filament: PETG }\n`);
const files = { 'set.yaml': spinner, 'log.yaml': `trials:\n${trials.join('')}` };

/** A file without end; what other files are refused for is tested where they are read (test/write/readText.test.ts). */
const ENDLESS = '/dev/zero';
/** The parameter that the refusal names, and each command that reads X for it. */
const readers: [string, string][] = [
  ['file', 'inspect X'],
  ['file', 'make X --out out'],
  ['profile', 'make set.yaml --out out --profile X'],
  ['file', 'batch X --out out'],
  ['file', 'coupon X --out out'],
  ['log', 'coupon --out out --log X'],
  ['log', 'trial X advise'],
  ['log', 'trial X add --gap 0.2 --outcome free'],
  ['sheet', 'trial new.yaml add --outcome free --sheet X'],
  ['write', 'trial log.yaml advise --write X --force'],
];

describe.skipIf(!existsSync(ENDLESS)).concurrent('a file without end', () => {
  it.each(readers)('as %s in %s: exit 2, one line, nothing written', async (parameter, line) => {
    const folder = folderWith(files);
    const { status, stdout, stderr } = await tried(folder, line.replace('X', ENDLESS).split(' '));
    expect(stderr).toBe(`cogweave: ${parameter}: ${ENDLESS}: is a device, not a file\n`);
    expect([status, stdout]).toEqual([2, '']);
    expect(readdirSync(folder).sort()).toEqual(Object.keys(files).sort());
  });
});

function tried(cwd: string, words: string[]): Promise<{ status: unknown; stdout: string; stderr: string }> {
  return new Promise((resolve) =>
    execFile(
      process.execPath,
      ['--max-old-space-size=150', command, ...words],
      { cwd, timeout: 50_000 },
      (error, stdout, stderr) =>
        resolve({ status: error ? (error.code ?? error.signal) : 0, stdout, stderr }),
    ),
  );
}
