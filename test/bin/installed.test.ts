// The package as a user gets it: packed, installed in an empty folder, and used from CommonJS, ES modules, TypeScript
// and the command line.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { root, spinner } from './command.js';
import { type Installed, install, output } from './installed.js';

const body = `
const spec = resolveSpec({ kind: 'planetary', module: 1.5, faceWidth: 5, sun: { teeth: 18 },
  planets: { teeth: 18, count: 3 }, tolerance: 0.05 });
const parts = buildSet(spec);
let refused;
try { resolveSpec({ kind: 'planetary', module: -1 }); } catch (error) { refused = error; }
import('cogweave').then((imported) => console.log(JSON.stringify({
  parts: parts.map(({ name, mesh }) => [name, mesh.triangles.length]),
  refusal: refused instanceof Refusal && refused instanceof imported.Refusal && refused.parameter,
})));
`;
const names = 'buildSet, resolveSpec, Refusal';

/** Typed code; each line marked as wrong must be found wrong, so that types that resolve to \`any\` fail. */
const typed = `
const spec: Spec = resolveSpec({ kind: 'planetary' });
const parts: Part[] = buildSet(spec);
const places: Float64Array = parts[0].mesh.positions;
// @ts-expect-error a spec is no text
buildSet('spec');
const said = (error: unknown): string => (error instanceof Refusal ? error.parameter : '');
const refusal: Refusal | null = null;
export const all = [places, said, refusal, inspectSet(spec).checks[0].id.length];
`;
const typedNames = 'buildSet, inspectSet, type Part, Refusal, resolveSpec, type Spec';

let user: Installed;
beforeAll(() => {
  user = install({
    'package.json': '{}',
    'script.cjs': `const { ${names} } = require('cogweave');${body}`,
    'script.mjs': `import { ${names} } from 'cogweave';${body}`,
    'typed.mts': `import { ${typedNames} } from 'cogweave';${typed}`,
    'typed.cts': `import { ${typedNames} } from 'cogweave';${typed}`,
    'spinner.yaml': spinner,
  });
});

describe('the packed package', () => {
  it('holds the compiled library and command, samples and licence, and nothing else', () => {
    for (const file of ['LICENSE', 'README.md', 'dist/bin/cogweave.js', 'dist/lib/index.js'])
      expect(user.packed).toContain(file);
    for (const file of user.packed) {
      expect(file).toMatch(/^(dist\/(lib|bin)|samples)\/|^(LICENSE|README\.md|package\.json)$/);
      const source = file.replace(/^dist\/(.*?)(\.d\.ts|\.js)$/, '$1.ts');
      if (!file.endsWith('.d.cts')) expect(existsSync(join(root, source)), file).toBe(true);
    }
  });

  it('gives CommonJS and ES modules the same code, and prints no warning', async () => {
    const runs = await Promise.all(
      ['script.cjs', 'script.mjs'].map((file) => output(user.folder, process.execPath, file)),
    );
    expect(runs.map(({ stderr }) => stderr)).toEqual(['', '']);
    expect(runs[0].stdout).toBe(runs[1].stdout);
    const { parts, refusal } = JSON.parse(runs[0].stdout);
    expect(parts.map(([name]: [string]) => name)).toEqual([
      'sun',
      'planet-1',
      'planet-2',
      'planet-3',
      'ring',
    ]);
    expect(refusal).toBe('module');
  });

  it.concurrent.each([
    ['nodenext', 'nodenext'],
    ['node16', 'node16'],
    ['preserve', 'bundler'],
  ])('has types for module %s, resolution %s', async (module, resolution) => {
    const tsc = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
    const flags = '--noEmit --strict --skipLibCheck --target es2022'.split(' ');
    const { stdout } = await output(
      user.folder,
      process.execPath,
      ...[tsc, ...flags, '--module', module, '--moduleResolution', resolution, 'typed.mts', 'typed.cts'],
    ).catch((error) => error);
    expect(stdout).toBe('');
  });

  it('has a command that npx finds', async () => {
    const { stdout } = await output(user.folder, 'npx', '--no-install', 'cogweave', '--version');
    expect(stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
    const command = join('node_modules', '.bin', 'cogweave');
    const made = await output(user.folder, command, 'make', 'spinner.yaml', '--out', 'out');
    expect(made.stdout).toContain('wrote out/spinner.3mf');
    expect(existsSync(join(user.folder, 'out', 'spinner.stl'))).toBe(true);
  });
});
