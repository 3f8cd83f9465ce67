import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * Folders of `lib`, each of which may import those before it. Files of `lib` itself that are not named here are its surface
 * and come last; those of a folder that are in none of its own folders may import from all of these, and these from them.
 */
const order = [
  ['lib/version.ts', 'lib/visible.ts', 'lib/problemCode.ts', 'lib/refusal.ts'],
  ['lib/tooth'],
  ['lib/stack'],
  ['lib/spec/profiles', 'lib/features', 'lib/spec/schema', 'lib/spec/kinds', 'lib/spec/rules'],
  ['lib/train/shifts'],
  ['lib/fit/carrier', 'lib/fit/ring', 'lib/fit/play', 'lib/fit/train', 'lib/fit/coupon', 'lib/fit/trials'],
  [
    'lib/solid/sweep',
    'lib/solid/stack',
    'lib/solid/bar',
    'lib/solid/features',
    'lib/solid/carrier',
    'lib/solid/coupon',
    'lib/solid/kernel',
  ],
  [
    'lib/proof/rolling',
    'lib/proof/mesh',
    'lib/proof/motion',
    'lib/proof/freeToTurn',
    'lib/proof/safety',
    'lib/proof/printing',
    'lib/proof/nearest',
    'lib/proof/checks',
    'lib/proof/arrangements',
    'lib/proof/coupon',
  ],
  ['lib/write/drawing', 'lib/write/threemf', 'lib/write/sheetPage', 'lib/write/coupon'],
  ['lib/batch'],
];

/** What still goes against it. This list may only become shorter. */
const against = [
  'lib/proof/nearest/helpedBodies.ts -> lib/proof/checks/bed.ts',
  'lib/proof/nearest/raisedSolids.ts -> lib/proof/checks/bed.ts',
  'lib/proof/nearest/works.ts -> lib/proof/checks/outlines.ts',
  'lib/proof/nearest/works.ts -> lib/proof/checks/tipThickness.ts',
];

/** Files that import themselves by way of others, types counted too. This list may only become shorter. */
const onCircles = [
  'lib/fit/carrier/carrierSizes.ts',
  'lib/fit/carrier/plateRoom.ts',
  'lib/fit/train/fitTrain.ts',
  'lib/fit/train/setOf.ts',
  'lib/proof/findings.ts',
  'lib/proof/motion/trainPlay.ts',
  'lib/proof/safety/fingerGaps.ts',
  'lib/proof/sheetTypes.ts',
  'lib/solid/additions.ts',
  'lib/solid/readAdditions.ts',
  'lib/solid/sweep/pitchVertices.ts',
  'lib/solid/sweep/steps.ts',
  'lib/tooth/externalProfile.ts',
  'lib/tooth/internalProfile.ts',
  'lib/tooth/profile.ts',
  'lib/train/merit.ts',
  'lib/train/planWanted.ts',
  'lib/write/digests.ts',
  'lib/write/files.ts',
  'lib/write/halfReplaced.ts',
  'lib/write/leftovers.ts',
  'lib/write/makeSet.ts',
  'lib/write/results.ts',
];

/** Every file of `lib`, and the files of `lib` that it imports. */
const imports = new Map(
  readdirSync(join(root, 'lib'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .map((path) => `lib/${path.replaceAll('\\', '/')}`)
    .sort()
    .map((file) => [file, importsOf(file)]),
);

function importsOf(file: string): string[] {
  const { importedFiles } = ts.preProcessFile(readFileSync(join(root, file), 'utf8'));
  return importedFiles
    .filter(({ fileName }) => fileName.startsWith('.'))
    .map(({ fileName }) => posix.join(dirname(file), fileName).replace(/\.js$/, '.ts'));
}

/** Where a file stands in the order: its group, and its folder within that where it is in one. */
function placeOf(file: string): { group: number; within?: number } {
  const named = order.flatMap((folders, group) =>
    folders.map((folder, within) => ({ folder, group, within })),
  );
  const inside = named.find(({ folder }) => file === folder || file.startsWith(`${folder}/`));
  if (inside) return inside;
  const top = file.split('/').slice(0, 2).join('/');
  const group = order.findIndex((folders) => folders.some((folder) => folder.startsWith(`${top}/`)));
  return { group: group < 0 ? order.length : group };
}

function isAgainst(from: string, to: string): boolean {
  const [a, b] = [placeOf(from), placeOf(to)];
  if (a.group !== b.group) return a.group < b.group;
  return a.within !== undefined && b.within !== undefined && a.within < b.within;
}

/** Strongly connected files, by Tarjan's algorithm. */
function circlesOf(graph: ReadonlyMap<string, readonly string[]>): string[][] {
  const found: string[][] = [];
  const seen = new Map<string, number>();
  const open: string[] = [];
  const visit = (file: string): number => {
    const at = seen.size;
    seen.set(file, at);
    let least = at;
    open.push(file);
    for (const next of graph.get(file) ?? []) {
      if (!seen.has(next)) least = Math.min(least, visit(next));
      else if (open.includes(next)) least = Math.min(least, seen.get(next)!);
    }
    if (least === at) {
      const circle = open.splice(open.indexOf(file));
      if (circle.length > 1) found.push(circle.sort());
    }
    return least;
  };
  for (const file of graph.keys()) if (!seen.has(file)) visit(file);
  return found;
}

describe('imports within lib', () => {
  it('are read: every file that is imported is there', () => {
    expect(imports.size).toBeGreaterThan(100);
    expect([...imports].flatMap(([, to]) => to).filter((to) => !imports.has(to))).toEqual([]);
  });

  it('follow the order of folders', () => {
    const found = [...imports].flatMap(([from, to]) =>
      to.filter((each) => isAgainst(from, each)).map((each) => `${from} -> ${each}`),
    );
    expect(found).toEqual(against);
  });

  it('make no circle of files', () => {
    expect(circlesOf(imports).flat().sort()).toEqual(onCircles);
  });

  it('would be found to make one', () => {
    const graph = { a: ['b'], b: ['c'], c: ['b', 'd'], d: [] };
    expect(circlesOf(new Map(Object.entries(graph)))).toEqual([['b', 'c']]);
  });
});
