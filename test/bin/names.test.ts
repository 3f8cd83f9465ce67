import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { isPlain } from '../../lib/visible.js';
import { folderWith, run, spinner } from './command.js';

const nameless = spinner.replace(/^name:.*\n/, '');
/** The quickest there is to make: one small idler of the invented exhibit table. */
const idler = `kind: gear
module: 1.5
faceWidth: 3
helix: { form: spur }
gear: { teeth: 8 }
tolerance: 0.2
`;
const shown = (text: string) => isPlain(text.replaceAll('\n', ''));

describe.concurrent('a file whose own name cannot name its results', () => {
  it.each([
    ['con.yaml', 'con-set'],
    ['aux.txt.yaml', 'aux-set.txt'],
    ['LPT9.yaml', 'LPT9-set'],
    ['-rf.yaml', 'rf'],
    ['--help.yaml', 'help'],
    ['spin\u202elmay.yaml', 'spin-lmay'],
    ['spin\u001b[31m.yaml', 'spin-31m'],
    [`${'歯'.repeat(80)}.yaml`, '歯'.repeat(66)],
  ])('%j is refused with a name that works', async (path, near) => {
    const folder = folderWith({ [path]: nameless });
    const commands = [
      ['inspect', `./${path}`],
      ['make', `./${path}`, '--out', 'out'],
      ['batch', `./${path}`, '--out', 'out'],
      ['coupon', `./${path}`, '--out', 'out'],
    ];
    for (const words of commands) {
      const { status, stdout, stderr } = await run(folder, ...words);
      expect(stderr).toMatch(/^cogweave: file: .*name: in the file would do/);
      expect(stderr).toContain(`nearest that works: name: ${near}\n`);
      expect(shown(stderr)).toBe(true);
      expect([status, stdout]).toEqual([2, '']);
    }
    expect(readdirSync(folder)).toEqual([path]);
  });

  it('does where the file gives a name', async () => {
    const folder = folderWith({ 'con.yaml': `name: con-set\n${nameless}` });
    expect((await run(folder, 'inspect', 'con.yaml')).status).toBe(0);
  });

  it('is not written by plan, and no coupon has such a name', async () => {
    const folder = folderWith({});
    const plan = await run(folder, 'plan', '--outer', '60', '--write', 'nul.yaml');
    expect(plan).toMatchObject({ status: 2, stdout: '' });
    expect(plan.stderr).toContain('nearest that works: nul-set.yaml');
    for (const [name, near] of [
      ['CON', 'CON-set'],
      ['--help', 'help'],
    ]) {
      const { status, stderr } = await run(folder, 'coupon', `--name=${name}`, '--out', 'out');
      expect(status).toBe(2);
      expect(stderr).toMatch(new RegExp(`^cogweave: name: ${name}: .*nearest that works: ${near}\n$`));
    }
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe.concurrent('values of a file', () => {
  it('are shown without escape sequences and changes of direction', async () => {
    const folder = folderWith({
      'set.yaml': `${spinner}"\\e]0;x\\a": 1\nfit: { gap: "\\u202e0.2\\e[2J" }\nring: { "\\u200bteeth": 3 }\n`,
    });
    const { status, stderr } = await run(folder, 'inspect', 'set.yaml');
    expect(status).toBe(2);
    expect(shown(stderr)).toBe(true);
    expect(stderr).toContain('fit.gap: \\u202e0.2\\u001b[2J: must be');
    expect(stderr).toContain('\\u001b]0;x\\u0007: 1: unknown key');
  });

  it('of a batch make no formula, name no device, and turn no line around', async () => {
    const names = ['CON', '-rf', '"=1+1"', '"spin\\u202ener"', 'idler'];
    const list = names.map((name) => `  - { name: ${name}, "fit.gap": "=cmd\\e[31m" }`);
    const folder = folderWith({
      'set.yaml': `name: set\n${idler}variants:\n${list.join('\n')}\n  - { name: good, module: 2 }\n`,
    });
    const { status, stdout, stderr } = await run(
      folder,
      'batch',
      'set.yaml',
      '--out',
      'out',
      '--format',
      'stl',
    );
    expect(status).toBe(1);
    expect(shown(stdout) && shown(stderr)).toBe(true);
    const out = join(folder, 'out');
    const files = readdirSync(out, { recursive: true, encoding: 'utf8' });
    for (const file of files) expect(file).not.toMatch(/(^|\/)(con\b(?!-)|-|=)|\u202e/i);
    expect(files).toContain('good.stl');
    const csv = readFileSync(join(out, 'summary.csv'), 'utf8');
    expect(shown(csv.replaceAll('\r', ''))).toBe(true);
    expect(csv).toContain("'=cmd\\u001b[31m");
    expect(csv).not.toMatch(/(^|[,;"])=/m);
    const { variants } = JSON.parse(readFileSync(join(out, 'summary.json'), 'utf8'));
    expect(variants[0].overrides).toEqual({ name: 'CON', 'fit.gap': '=cmd\u001b[31m' });
  });

  it('mean the same in JSON, which shows them written out', async () => {
    const folder = folderWith({ 'log.yaml': 'trials: []\n' });
    const { status, stdout } = await run(
      folder,
      ...[
        'trial',
        'log.yaml',
        'add',
        '--gap',
        '0.2',
        '--outcome',
        'free',
        '--json',
        '--notes',
        'a\u200b31m\u202eb',
      ],
    );
    expect(status).toBe(0);
    expect(shown(stdout)).toBe(true);
    expect(JSON.parse(stdout).added.notes).toBe('a\u200b31m\u202eb');
  });
});
