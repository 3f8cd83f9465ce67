// The package as a user gets it: packed, installed in an empty folder, and used from CommonJS, ES modules, TypeScript
// and the command line.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readThreemf } from '../outside/readThreemf.js';
import { root, spinner } from './command.js';
import { type Installed, install, output } from './installed.js';

const body = `
const spec = resolveSpec({ kind: 'planetary', module: 1.5, faceWidth: 5, sun: { teeth: 18 },
  planets: { teeth: 18, count: 3 }, tolerance: 0.05 });
const parts = buildSet(spec);
let refused;
try { resolveSpec({ kind: 'planetary', module: -1 }); } catch (error) { refused = error; }
const { cylinder } = modeling.primitives;
const changed = buildSet(spec, { join: { sun: cylinder({ radius: 5, height: 6, center: [0, 0, 7] }) },
  cut: { planets: cylinder({ radius: 3, height: 40 }) } });
Promise.all([changed, import('cogweave')]).then(([changed, imported]) => {
  const sums = createHash('sha256');
  for (const { mesh } of changed) sums.update(mesh.positions).update(mesh.triangles);
  console.log(JSON.stringify({
    parts: parts.map(({ name, mesh }) => [name, mesh.triangles.length]),
    solid: Object.keys(toGeom3(parts[0])).sort(),
    changed: changed.map(({ name }) => name),
    bytes: sums.digest('hex'),
    refusal: refused instanceof Refusal && refused instanceof imported.Refusal && refused.parameter,
  }));
});
`;
const names = 'buildSet, resolveSpec, toGeom3, Refusal';

/** Typed code; each line marked as wrong must be found wrong, so that types that resolve to \`any\` fail. */
const typed = `
const spec: Spec = resolveSpec({ kind: 'planetary' });
const parts: Part[] = buildSet(spec);
const places: Float64Array = parts[0].mesh.positions;
// @ts-expect-error a spec is no text
buildSet('spec');
const said = (error: unknown): string => (error instanceof Refusal ? error.parameter : '');
const refusal: Refusal | null = null;
const solid: Geom3 = toGeom3(parts[0]);
const additions: Additions = { join: { ring: solid }, cut: { planets: [solid, solid] } };
const later: Promise<Part[]> = buildSet(spec, additions);
const proved: Promise<Proved> = proveSet(spec, { join: { ring: solid }, force: true });
const now: Proved = proveSet(spec, { force: true });
// @ts-expect-error parts with additions come as a promise
const wrong: Part[] = buildSet(spec, additions);
export const all = [places, said, refusal, later, proved, now, wrong, inspectSet(spec).checks[0].id.length];
`;
const typedNames =
  'type Additions, buildSet, type Geom3, inspectSet, type Part, type Proved, proveSet, Refusal, resolveSpec, type Spec, toGeom3';

/** Two small gears of the invented exhibit table. */
const idlers = `name: idler
kind: gear
module: 1.5
faceWidth: 6
helix: { form: spur }
gear: { teeth: 8 }
tolerance: 0.05
variants: { fit.gap: [0.2, 0.25] }
`;

let user: Installed;
beforeAll(() => {
  user = install({
    'package.json': '{}',
    'script.cjs': `const { ${names} } = require('cogweave');
const modeling = require('@jscad/modeling');
const { createHash } = require('node:crypto');${body}`,
    'script.mjs': `import { ${names} } from 'cogweave';
import modeling from '@jscad/modeling';
import { createHash } from 'node:crypto';${body}`,
    'typed.mts': `import { ${typedNames} } from 'cogweave';${typed}`,
    'typed.cts': `import { ${typedNames} } from 'cogweave';${typed}`,
    'spinner.yaml': spinner,
    'idlers.yaml': idlers,
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
    const { parts, changed, solid, refusal } = JSON.parse(runs[0].stdout);
    expect(parts.map(([name]: [string]) => name)).toEqual([
      'sun',
      'planet-1',
      'planet-2',
      'planet-3',
      'ring',
    ]);
    expect(changed).toEqual(parts.map(([name]: [string]) => name));
    expect(solid).toEqual(['color', 'name', 'polygons', 'transforms']);
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

  it('asks for nothing that only Node.js has before a script writes files', () => {
    const seen = new Set<string>();
    const visit = (file: string) => {
      if (seen.has(file)) return;
      seen.add(file);
      for (const [, from] of readFileSync(file, 'utf8').matchAll(
        /^(?:import|export)\b[^;]*?\bfrom '([^']+)';/gm,
      )) {
        expect(from, file).not.toMatch(/^node:/);
        if (from.startsWith('.')) visit(join(dirname(file), from));
      }
    };
    visit(join(user.folder, 'node_modules', 'cogweave', 'dist', 'lib', 'index.js'));
    expect(seen.size).toBeGreaterThan(50);
  });

  it('has a sample script in CommonJS that runs', async () => {
    const script = join('node_modules', 'cogweave', 'samples', 'knobbed-spinner.cjs');
    const { stdout, stderr } = await output(user.folder, process.execPath, script, 'knobbed');
    expect(stderr).toBe('');
    const files = stdout.trim().split('\n');
    expect(files).toHaveLength(5);
    const { meshes } = await readThreemf(readFileSync(join(user.folder, files[1])));
    expect(meshes.map(({ name }) => name)).toEqual(['sun', 'planet-1', 'planet-2', 'planet-3', 'ring']);
    for (const { manifoldAndOriented } of meshes) expect(manifoldAndOriented).toBe(true);
    // The knob reaches 12 mm above the teeth of 10 mm.
    expect(Math.max(...meshes[0].mesh.positions.filter((_, i) => i % 3 === 2))).toBeCloseTo(22, 6);
  });

  it('has a command that npx finds', async () => {
    const { stdout } = await output(user.folder, 'npx', '--no-install', 'cogweave', '--version');
    expect(stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
    const command = join('node_modules', '.bin', 'cogweave');
    const made = await output(user.folder, command, 'make', 'spinner.yaml', '--out', 'out');
    expect(made.stdout).toContain('wrote out/spinner.3mf');
    expect(existsSync(join(user.folder, 'out', 'spinner.stl'))).toBe(true);
    // Its workers find their own file in the package.
    const words = [
      'idlers.yaml',
      '--jobs',
      '2',
      '--out',
      'many',
      '--format',
      'stl',
      '--picture-size',
      '32x24',
    ];
    const batch = await output(user.folder, command, 'batch', ...words, '--json');
    expect(JSON.parse(batch.stdout)).toMatchObject({ made: 2, kept: 0, refused: 0 });
    expect(existsSync(join(user.folder, 'many', 'idler_gap-0.25.stl'))).toBe(true);
  });
});
