import { describe, expect, it } from 'vitest';
import { folderWith, run, spinner } from './command.js';

describe.concurrent('--profile', () => {
  it('fills printer and filament, and the file’s own values win', async () => {
    const folder = folderWith({
      'set.yaml': `${spinner}filament: { shrinkage: 0.1 }\n`,
      'mine.yaml': 'printer: { growth: 0.05 }\nfilament: { material: PETG, shrinkage: 0.4 }\n',
    });
    const { stdout, status } = await run(folder, 'inspect', 'set.yaml', '--profile', 'mine.yaml', '--json');
    expect(status).toBe(0);
    const { printer, filament } = JSON.parse(stdout).resolved;
    expect(printer.growth).toBe(0.05);
    expect(filament).toMatchObject({ material: 'PETG', shrinkage: 0.1 });
  });

  it.each([
    ['missing', 'other.yaml', ['profile']],
    ['a folder', '.', ['profile']],
    ['wrong in two places', 'bad.yaml', ['profile.printer.nozzle', 'profile.filament']],
  ])('that is %s is refused with one line a problem', async (_, profile, parameters) => {
    const folder = folderWith({
      'set.yaml': spinner,
      'bad.yaml': 'printer: { nozzle: 9 }\nfilament: wood\n',
    });
    const { stdout, stderr, status } = await run(
      folder,
      'make',
      'set.yaml',
      '--out',
      'out',
      '--profile',
      profile,
    );
    expect(status).toBe(2);
    expect(stdout).toBe('');
    const lines = stderr.trimEnd().split('\n');
    expect(lines.map((line) => /^cogweave: ([^:]+): /.exec(line)?.[1])).toEqual(parameters);
  });
});
