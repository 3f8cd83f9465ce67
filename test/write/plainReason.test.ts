import { openSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { expect, it } from 'vitest';
import { outOfMemory, plainReason, scarcity } from '../../lib/write/plainReason.js';

const thrown = (work: () => unknown): unknown => {
  try {
    return work();
  } catch (error) {
    return error;
  }
};

it('says what the file system has against it, and nothing of other errors', () => {
  expect(plainReason(thrown(() => openSync('/no/such/file', 'r')))).toBe('there is no such file or folder');
  expect(plainReason(new Error('EMFILE'))).toBe(undefined);
  expect(scarcity(thrown(() => openSync('/no/such/file', 'r')))).toBe(undefined);
  expect(scarcity(new TypeError('x is not a function'))).toBe(undefined);
});

it('knows a worker whose memory ran out, and an array for which there is none', async () => {
  const hoard = 'const all = []; for (;;) all.push(new Array(1000).fill(Math.random()))';
  const worker = new Worker(hoard, { eval: true, resourceLimits: { maxOldGenerationSizeMb: 16 } });
  const error = await new Promise((resolve) => worker.on('error', resolve));
  const words = /^memory ran out; a coarser tolerance takes less/;
  expect(outOfMemory(error)).toMatch(words);
  expect(scarcity(error)).toMatch(words);
  expect(scarcity(thrown(() => new ArrayBuffer(2 ** 52)))).toMatch(words);
});
