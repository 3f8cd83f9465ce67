// Locks of processes that ended, and of those that cannot be known.
import { execFile } from 'node:child_process';
import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { hasEnded, markOf, markText, thisProcess } from '../../lib/write/processMark.js';
import { withLock } from '../../lib/write/trials/lock.js';
import { addToLogFile, readLogFile } from '../../lib/write/trials/logFile.js';
import { mounted, NO_MOUNT } from '../bin/mounted.js';
import { killedBy, tellsProcesses } from './faults.js';

const root = mkdtempSync(join(tmpdir(), 'cogweave-lock-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
const newLog = () => join(mkdtempSync(join(root, 'log-')), 'log.yaml');
const script = join(import.meta.dirname, 'addTrial.mjs');
const trial = { gap: 0.25, outcome: 'tight' } as const;
const around = (log: string) => readdirSync(join(log, '..')).sort();

/** A lock of a process that has ended: this one's number, started at another time. */
const deadLock = (log: string) => {
  const mark = markText({ ...thisProcess, start: '1', mark: 'abcdef' });
  writeFileSync(`${log}.lock`, `process ${process.pid}\n${mark} 0123456789\n`);
};

/** Adds by a process of its own; what it says. */
const adding = (log: string, notes: string) =>
  new Promise<string>((resolve, reject) => {
    execFile(process.execPath, [script, log, notes], (error, stdout) =>
      error ? reject(error) : resolve(stdout),
    );
  });

describe.skipIf(!tellsProcesses)(
  'a lock whose process has ended (left out where the system does not tell)',
  () => {
    it('killed at any step, an adder hinders no other, and no trial that was there is lost', async () => {
      const steps = { writeFile: 1, link: 1, open: 1, rename: 1, unlink: 2, realpath: 1 };
      const told: string[] = [];
      for (const [name, count] of Object.entries(steps))
        for (let i = 1; i <= count; i++) {
          const log = newLog();
          writeFileSync(log, 'trials:\n  - { gap: 0.25, outcome: tight }\n');
          expect(await killedBy(`SIGKILL ${name} ${i}`, [script, log, 'killed'])).toBe(true);
          const held = existsSync(`${log}.lock`);
          const said: string[] = [];
          const trials = await addToLogFile(log, trial, { say: (words) => said.push(words) });
          const words = /log\.yaml\.lock was left by process \d+, which has ended; it is taken over$/;
          expect([name, i, said.map((line) => words.test(line))]).toEqual([name, i, held ? [true] : []]);
          expect(readLogFile(log).filter(({ notes }) => notes === undefined)).toHaveLength(2);
          expect(trials).toBe(readLogFile(log).length);
          expect([name, i, around(log)]).toEqual([name, i, ['log.yaml']]);
          if (held) told.push(`${name} ${i}`);
        }
      expect(told).toContain('rename 1');
    });

    it('is taken over by one of many that come at once, and each adds its own', async () => {
      const log = newLog();
      deadLock(log);
      const notes = ['a', 'b', 'c', 'd', 'e', 'f'];
      const said = await Promise.all(notes.map((note) => adding(log, note)));
      expect(said.join('').match(/taken over/g)).toHaveLength(1);
      expect(new Set(readLogFile(log).map((each) => each.notes))).toEqual(new Set(notes));
      expect(around(log)).toEqual(['log.yaml']);
    });

    it('lets one in at a time, however many find the dead lock at once', async () => {
      for (let round = 0; round < 20; round++) {
        const log = newLog();
        deadLock(log);
        const [inside, said]: [string[], string[]] = [[], []];
        const work = async () => {
          inside.push('in');
          await new Promise((resolve) => setTimeout(resolve, 1));
          inside.push('out');
        };
        const say = (words: string) => said.push(words);
        await Promise.all(Array.from({ length: 8 }, () => withLock('log', log, work, { say })));
        expect(inside.join(' ')).toBe(Array(8).fill('in out').join(' '));
        expect(said).toHaveLength(1);
        expect(around(log)).toEqual([]);
      }
    });

    it('is taken over though whoever took it over before was killed at that, at any step', async () => {
      // In turn: guard written, guard in place, lock taken away, guard taken away, own lock.
      for (const step of [
        'writeFile 1',
        'link 1',
        'unlink 1',
        'unlink 2',
        'unlink 3',
        'link 2',
        'rename 1',
      ]) {
        const log = newLog();
        deadLock(log);
        expect([step, await killedBy(`SIGKILL ${step}`, [script, log, 'taker'])]).toEqual([step, true]);
        await addToLogFile(log, trial);
        expect(readLogFile(log)).toEqual([trial]);
        // A kill in the moment between lock and guard leaves the guard, which hinders nobody.
        const rest = around(log).filter((name) => !/^log\.yaml\.lock\.[0-9a-z]{10}$/.test(name));
        expect([step, rest]).toEqual([step, ['log.yaml']]);
      }
    });

    it('is known by its start: another process under its number does not hold it', async () => {
      const log = newLog();
      deadLock(log);
      await addToLogFile(log, trial);
      expect(around(log)).toEqual(['log.yaml']);
    });
  },
);

describe('a lock of which nothing is known here', () => {
  it.each([
    [
      'of another machine',
      `process 7\n${markText({ ...thisProcess, place: 'elsewher', mark: 'abcdef' })} 0123456789\n`,
    ],
    ['that names nobody', ''],
    ['of an earlier version', 'process 7\n'],
  ])('%s is left alone while it is young, and taken over with a word when it is old', async (_, text) => {
    const log = newLog();
    writeFileSync(`${log}.lock`, text);
    const done = () => Promise.resolve('done');
    await expect(withLock('log', log, done, { patience: 30 })).rejects.toThrow(
      /is locked by another cogweave \(process (7|unknown)\); delete .*log\.yaml\.lock if none is running/,
    );
    expect(readFileSync(`${log}.lock`, 'utf8')).toBe(text);
    const before = Date.now() / 1000 - 15 * 60;
    utimesSync(`${log}.lock`, before, before);
    const said: string[] = [];
    expect(await withLock('log', log, done, { patience: 30, say: (words) => said.push(words) })).toBe('done');
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(
      /was left by process .*, of which nothing is known here, 15 minutes ago; it is taken over$/,
    );
    expect(around(log)).toEqual([]);
  });
});

it('a full disk leaves no lock, and what to do is said', async ({ skip }) => {
  const folder = join(root, 'full');
  const disk = mounted(folder, 'size=40k');
  if (!disk) return skip(NO_MOUNT);
  try {
    const log = join(folder, 'log.yaml');
    await addToLogFile(log, trial);
    const filler = () =>
      writeFileSync(join(folder, `filler-${readdirSync(folder).length}`), new Uint8Array(4096));
    expect(() => {
      for (;;) filler();
    }).toThrow('ENOSPC');
    await expect(addToLogFile(log, trial)).rejects.toThrow(/cannot be written: the disk is full/);
    expect(readdirSync(folder).filter((name) => name.includes('lock') || name.endsWith('.part'))).toEqual([]);
    disk.remount('size=1m');
    expect(await addToLogFile(log, trial)).toBe(2);
  } finally {
    disk.unmount();
  }
});

it('a mark tells whether its process has ended', () => {
  expect(hasEnded(thisProcess)).toBe(tellsProcesses ? false : undefined);
  expect(hasEnded({ ...thisProcess, place: 'elsewher' })).toBe(undefined);
  expect(hasEnded({ ...thisProcess, place: '0' })).toBe(undefined);
  if (!tellsProcesses) return;
  expect(hasEnded({ ...thisProcess, start: '1' })).toBe(true);
  // No process has a number this high: the kernel's own bound is 4194304 (proc(5)).
  expect(hasEnded({ ...thisProcess, id: 5_000_000 })).toBe(true);
});

it('a mark leaves room in a file name for the longest name and ending', () => {
  const longest = markText({
    place: 'z'.repeat(8),
    id: 4_194_304,
    start: 'z'.repeat(7),
    mark: 'z'.repeat(6),
  });
  // A name may have 200 bytes (lib/spec/name.ts), a file name 255: `.NAME.sheet.html.MARK-WRITING.part`.
  expect(200 + `..sheet.html.${longest}-0000.part`.length).toBeLessThanOrEqual(255);
  expect(markOf(longest)).toMatchObject({ id: 4_194_304 });
});
