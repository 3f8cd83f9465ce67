import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { run } from './command.js';

const samples = join(import.meta.dirname, '..', '..', 'samples');

describe('samples', () => {
  it.each(readdirSync(samples).filter((name) => name.endsWith('.yaml')))('%s is proved', async (name) => {
    const { status, stdout } = await run(samples, 'inspect', name, '--json');
    const sheet = JSON.parse(stdout);
    expect(
      sheet.checks.filter(
        (check: { holds: boolean; level: string }) => !check.holds && check.level === 'must',
      ),
    ).toEqual([]);
    expect(status).toBe(0);
    expect(sheet.name).toBe(name.replace('.yaml', ''));
  });
});
