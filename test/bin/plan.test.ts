import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSpec } from '../../lib/spec/readSpec.js';
import { merits } from '../../lib/train/merit.js';
import { planetary } from '../sets.js';
import { folderWith, run } from './command.js';

const wish = ['--planets', '5', '--module', '1.5', '--ring-teeth', '40-48', '--ratio', '4'];

describe.concurrent('plan', () => {
  it('prints aligned rows, best first, and says what was searched', async () => {
    const { status, stdout, stderr } = await run(folderWith({}), 'plan', '--limit', '7');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain('herringbone at 30°');
    expect(stdout).toContain('at most 220 mm across');
    expect(stdout).toContain(merits.overall.says);
    const lines = stdout.split('\n');
    const head = lines.findIndex((line) => /^row .* merit$/.test(line));
    const rows = lines.slice(head + 1, head + 8);
    expect(rows.map((line) => Number(line.trim().split(/\s+/)[0]))).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(new Set(rows.map((line) => line.length))).toEqual(new Set([lines[head].length]));
    const missed = lines.slice(lines.findIndex((line) => line.endsWith('  fails')) + 1).filter(Boolean);
    expect(missed.length).toBe(7);
    for (const line of missed) expect(line).toMatch(/ [a-zA-Z-]+: \S/);
  });

  it('prints one JSON document with the keys that stay', async () => {
    const { stdout, stderr } = await run(folderWith({}), 'plan', ...wish, '--json');
    expect(stderr).toBe('');
    const { wanted, rows, nearMisses, ...rest } = JSON.parse(stdout);
    expect(rest).toEqual({});
    expect(wanted).toMatchObject({ planets: { least: 5, most: 5 }, module: [1.5], helixForm: 'herringbone' });
    expect(rows).toEqual([
      {
        sunTeeth: 15,
        planetTeeth: 15,
        ringTeeth: 45,
        planets: 5,
        module: 1.5,
        spacing: 'equal',
        unbalance: 0,
        profileShifts: { sun: 0, planet: 0, ring: 0 },
        outerDiameter: expect.closeTo((1.5 * 45) / Math.cos(Math.PI / 6) + 2.5 * 1.5 + 2 * 4.05, 9),
        opening: { arc: expect.any(Number), drop: expect.any(Number) },
        ratios: { ringHeld: 4, carrierHeld: -3, sunHeld: expect.closeTo(4 / 3, 12) },
        engagement: expect.any(Number),
        merit: expect.any(Number),
      },
    ]);
    for (const miss of nearMisses) expect(miss.fails).toMatch(/^[a-zA-Z-]+: \S/);
  });

  it('writes a row that make and inspect take as it is', { timeout: 120_000 }, async () => {
    const folder = folderWith({});
    const words = ['--planets', '3', '--ring-teeth', '40-60', '--helix', 'spur', '--face-width', '5'];
    const found = await run(
      folder,
      'plan',
      ...words,
      '--module',
      '1.2',
      '--gap',
      '0.3',
      '--rim',
      '4',
      '--json',
    );
    const written = await run(
      folder,
      ...[
        'plan',
        ...words,
        '--module',
        '1.2',
        '--gap',
        '0.3',
        '--rim',
        '4',
        '--nozzle',
        '0.3',
        '--bed',
        '150',
      ],
      ...['--write', 'chosen.yaml', '--row', '2'],
    );
    expect(written.stderr).toBe('');
    expect(written.stdout).toContain('wrote chosen.yaml, row 2\n');
    const text = readFileSync(join(folder, 'chosen.yaml'), 'utf8');
    const row = JSON.parse(found.stdout).rows[1];
    expect(readSpec(text)).toMatchObject({
      module: 1.2,
      faceWidth: 5,
      helix: { form: 'spur', angle: 0 },
      sun: { teeth: row.sunTeeth, profileShift: 0 },
      planets: { teeth: row.planetTeeth, count: 3, spacing: 'equal' },
      ring: { teeth: row.ringTeeth, rim: 4 },
      fit: { gap: 0.3 },
      printer: { nozzle: 0.3, bed: { width: 150, depth: 150 } },
    });
    expect(text.split('\n').filter((line) => line.includes('#')).length).toBeGreaterThan(8);
    const made = await run(folder, 'make', 'chosen.yaml', '--out', 'out', '--tolerance', '0.05');
    expect(made.stderr).toBe('');
    expect(made.status).toBe(0);
    expect(existsSync(join(folder, 'out/chosen.stl'))).toBe(true);
  });

  it('fits a hole with uneven planets and another rack, and writes what inspect takes', {
    timeout: 60_000,
  }, async () => {
    const folder = folderWith({});
    const words = [
      ...[
        '--hole',
        '70',
        '--planets',
        '5',
        '--spacing',
        'nearest',
        '--module',
        '1.2',
        '--ring-teeth',
        '42-44',
      ],
      ...['--rack', '0.9,1.2,0.3', '--pressure-angle', '22', '--limit', '3', '--face-width', '6'],
    ];
    const { stdout, stderr } = await run(folder, 'plan', ...words, '--write', 'uneven.yaml');
    expect(stderr).toBe('');
    expect(stdout).toContain('at most 69.5 mm across, to go into a hole of 70 mm');
    expect(stdout).toContain('pressure angle 22°');
    expect(stdout).toMatch(/^row .* spacing {2}unbal %/m);
    expect(stdout).toMatch(/^ +1 .* nearest +[1-9\d]*\d?\.\d\d /m);
    const text = readFileSync(join(folder, 'uneven.yaml'), 'utf8');
    expect(readSpec(text)).toMatchObject({
      pressureAngle: 22,
      rack: { addendum: 0.9, dedendum: 1.2, fillet: 0.3 },
      planets: { spacing: 'nearest' },
    });
    const inspected = await run(folder, 'inspect', 'uneven.yaml', '--tolerance', '0.05');
    expect(inspected.stderr).not.toContain('refused');
    expect(inspected.status).toBe(0);
  });

  it('says what else could be searched where little is found', async () => {
    const words = ['--sun-teeth', '15', '--planet-teeth', '14', '--planets', '5', '--module', '1.5'];
    const plain = await run(folderWith({}), 'plan', ...words);
    expect(plain.stdout).toContain(
      'not searched: --shifts solve: teeth with profile shifts; --spacing nearest',
    );
    const solved = await run(folderWith({}), 'plan', ...words, '--shifts', 'solve');
    expect(solved.stderr).toBe('');
    expect(solved.stdout).toMatch(/^ +1 +15 +14 +45 +5 /m);
    expect(solved.stdout).not.toContain('--shifts solve:');
  });

  it('never writes over a file unless told to', async () => {
    const folder = folderWith({ 'mine.yaml': 'mine' });
    const kept = await run(folder, 'plan', ...wish, '--write', 'mine.yaml');
    expect(kept.status).toBe(2);
    expect(kept.stderr).toMatch(/^cogweave: write: mine\.yaml: is there already[^\n]*\n$/);
    expect(kept.stdout).toBe('');
    expect(readFileSync(join(folder, 'mine.yaml'), 'utf8')).toBe('mine');
    const forced = await run(folder, 'plan', ...wish, '--write', 'mine.yaml', '--force');
    expect(forced.status).toBe(0);
    expect(planetary(readSpec(readFileSync(join(folder, 'mine.yaml'), 'utf8'))).sun.teeth).toBe(15);
    expect(readdirSync(folder)).toEqual(['mine.yaml']);
  });

  it('says so when nothing answers', async () => {
    const folder = folderWith({});
    const none = ['--sun-teeth', '16', '--planet-teeth', '16', '--planets', '5'];
    const found = await run(folder, 'plan', ...none);
    expect(found.status).toBe(0);
    expect(found.stdout).toContain('no set answers this');
    expect(found.stdout).toContain('(16 + 48) / 5 is not whole');
    const write = await run(folder, 'plan', ...none, '--write', 'a.yaml');
    expect(write.status).toBe(2);
    expect(write.stderr).toBe('cogweave: row: 1: no set was found\n');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('ranks by the figure asked for', async () => {
    const { stdout } = await run(folderWith({}), 'plan', '--by', 'size', '--outer', '90', '--json');
    const { rows } = JSON.parse(stdout);
    const sizes = rows.map(({ outerDiameter }: { outerDiameter: number }) => outerDiameter);
    expect(rows.length).toBe(20);
    expect(sizes).toEqual(sizes.toSorted((a: number, b: number) => a - b));
  });

  it('explains every figure of merit in its help', async () => {
    const { stdout } = await run(folderWith({}), 'plan', '--help');
    const plain = stdout.replace(/\s+/g, ' ');
    for (const [name, { says }] of Object.entries(merits)) expect(plain).toContain(`${name}: ${says}`);
  });
});

describe.concurrent('flags of plan that are wrong', () => {
  it.each<[string, string[], string[]]>([
    ['a word for a number', ['--outer', 'wide'], ['outer']],
    ['a decimal comma', ['--gap', '0,3'], ['gap']],
    ['a span of three', ['--planets', '3-5-7'], ['planets']],
    ['a span the wrong way round', ['--planets', '7-3'], ['planets']],
    ['teeth that are too many', ['--sun-teeth', '10-999'], ['sun-teeth']],
    ['half a tooth', ['--ring-teeth', '45.5'], ['ring-teeth']],
    ['a module out of range', ['--module', '1,50'], ['module']],
    ['no standard module between', ['--module', '1.52-1.6'], ['module']],
    ['a helix of another form', ['--helix', 'spiral'], ['helix']],
    ['spur teeth with an angle', ['--helix', 'spur:20'], ['helix']],
    ['two helix angles', ['--helix', 'helical:20', '--helix-angle', '25'], ['helix-angle']],
    ['a helix too steep', ['--helix-angle', '60'], ['helix-angle']],
    ['a member that is not there', ['--ratio', '4', '--held', 'planet'], ['held']],
    ['a member held for no ratio', ['--held', 'sun'], ['held']],
    ['a merit that is not one', ['--by', 'beauty'], ['by']],
    ['near to no ratio', ['--by', 'ratio'], ['by']],
    ['shifts of another sort', ['--shifts', 'maybe'], ['shifts']],
    ['spacing of another sort', ['--spacing', 'even'], ['spacing']],
    ['a hole for a finger', ['--hole', '2'], ['hole']],
    ['a rack that is not one', ['--rack', 'E'], ['rack']],
    ['a rack of two figures', ['--rack', '1,1.25'], ['rack']],
    ['a rack too deep', ['--rack', '1,9,0.3'], ['rack']],
    ['a pressure angle out of range', ['--pressure-angle', '60'], ['pressure-angle']],
    ['a row without a file', ['--row', '2'], ['row']],
    ['row 0', ['--write', 'a.yaml', '--row', '0'], ['row']],
    ['a row that is not there', [...wish, '--write', 'a.yaml', '--row', '2'], ['row']],
    ['a file that is a folder', ['--write', '.', '--force'], ['write']],
    ['a folder that cannot be made', ['--write', 'file/a.yaml'], ['write']],
    ['a flag without its value', ['--outer'], ['outer']],
    ['an unknown flag', ['--color', 'red'], ['--color']],
    ['a word too many', ['set.yaml'], ['command line']],
    ['several at once', ['--outer', 'x', '--gap', 'y', '--planets', 'z'], ['gap', 'outer', 'planets']],
    ['several out of range', ['--outer', '0', '--gap', '9', '--planets', '40'], ['gap', 'outer', 'planets']],
  ])('%s', async (_, words, parameters) => {
    const folder = folderWith({});
    writeFileSync(join(folder, 'file'), '');
    const { status, stdout, stderr } = await run(folder, 'plan', ...words);
    const lines = stderr.trimEnd().split('\n');
    expect(lines.map((line) => /^cogweave: ([^:]+): /.exec(line)?.[1]).sort()).toEqual(parameters);
    expect(stdout).toBe('');
    expect(status).toBe(2);
    expect(readdirSync(folder)).toEqual(['file']);
  });
});
