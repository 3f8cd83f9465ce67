import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { emptyRow, type VariantRecord } from '../../lib/batch/record.js';
import { filesOf, readRecord, writeRecord } from '../../lib/batch/records.js';

const folder = mkdtempSync(join(tmpdir(), 'cogweave-records-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
mkdirSync(join(folder, 'records'));

const files = filesOf({ name: 'idler', formats: ['stl'], picture: { width: 8, height: 8 } });
const made: VariantRecord = {
  ...emptyRow('idler', { 'fit.gap': 0.2 }),
  status: 'made',
  size: [12, 12, 3],
  gears: [{ part: 'gear', teeth: 8, count: 1, module: 1.5 }],
  gaps: [{ between: 'sun/planet', asked: 0.2, rolling: null, bodies: 0.2 }],
  triangles: 572,
  volume: 206.1,
  files,
  fingerprint: 'ab'.repeat(32),
  written: files.map((name) => ({ name, bytes: 10, sha256: '0f'.repeat(32) })),
};
const refusal = {
  code: 'beyond-limit' as const,
  parameter: 'fit.gap',
  value: 9,
  rule: 'is too much',
  nearest: [2],
  says: ['fit.gap: 9'],
};
const refused: VariantRecord = {
  ...emptyRow('idler', {}),
  status: 'refused',
  fingerprint: null,
  written: [],
  refusal,
};

const said: string[] = [];
const read = (record: unknown) => {
  writeFileSync(
    join(folder, 'records', 'idler.json'),
    typeof record === 'string' ? record : JSON.stringify(record),
  );
  said.length = 0;
  return readRecord(folder, 'idler', files, (words) => said.push(words));
};

describe('a record', () => {
  it.each([
    ['made', made],
    ['refused', refused],
    ['refused for a parameter that is missing', { ...refused, refusal: { ...refusal, value: undefined } }],
  ])('of a variant that was %s is read as it was written', async (_, record) => {
    await writeRecord(folder, record);
    const found = readRecord(folder, 'idler', files, (words) => said.push(words));
    expect(JSON.stringify(found)).toBe(JSON.stringify(record));
    expect(said).toEqual([]);
  });

  it.each<[string, unknown]>([
    ['no JSON', '{ half'],
    ['nothing', ''],
    ['null', 'null'],
    ['a list', []],
    ['of another variant', { ...made, name: 'other' }],
    ['without a refusal', { ...refused, refusal: null }],
    ['with a refusal that says nothing', { ...refused, refusal: { ...refusal, says: [] } }],
    ['refused, with files', { ...refused, files }],
    ['made and refused', { ...made, refusal }],
    ['with nothing written', { ...made, written: [] }],
    ['with no files', { ...made, files: undefined }],
    ['with a file too few', { ...made, files: files.slice(1), written: made.written.slice(1) }],
    ['with a file of its own', { ...made, files: [...files, 'idler.exe'], written: made.written }],
    ['with a file elsewhere', { ...made, files: files.map((name) => `../${name}`) }],
    [
      'with a digest that is none',
      { ...made, written: made.written.map((each) => ({ ...each, sha256: 'x' })) },
    ],
    [
      'with a length that is none',
      { ...made, written: made.written.map((each) => ({ ...each, bytes: -1 })) },
    ],
    ['with a size that is none', { ...made, size: [1, 2] }],
    ['without checks', { ...made, checks: null }],
    ['with gears that are none', { ...made, gears: [7] }],
    ['with a status that is none', { ...made, status: 'missing' }],
    ['with a fingerprint that is none', { ...made, fingerprint: null }],
    ['that is larger than any', ' '.repeat(1_000_001)],
  ])('%s counts for nothing, with a word', (_, record) => {
    expect(read(record)).toBe(undefined);
    expect(said).toEqual([
      `${join(folder, 'records', 'idler.json')} is not a whole record; it counts for nothing, and idler is to be made again`,
    ]);
  });

  it('that is not there needs no word, and a folder in its place does', () => {
    rmSync(join(folder, 'records', 'idler.json'), { force: true });
    said.length = 0;
    expect(readRecord(folder, 'idler', files, (words) => said.push(words))).toBe(undefined);
    expect(said).toEqual([]);
    mkdirSync(join(folder, 'records', 'idler.json'));
    expect(readRecord(folder, 'idler', files, (words) => said.push(words))).toBe(undefined);
    expect(said).toHaveLength(1);
  });
});
