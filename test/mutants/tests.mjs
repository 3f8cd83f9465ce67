// Which tests a folder's mutants are held against. A mutant that lives sees every one of them, so these are the folder's own
// tests and those of figures from outside that are near it and quick. Left out everywhere: what starts the built
// command, a browser, an installed package or workers. What these do not notice the rest of the tests still may.

const outside = (...names) => names.map((name) => `test/outside/${name}.test.ts`);

/** Folder → globs of its tests; the longest folder that a path begins with counts. */
const tests = {
  'lib/tooth': [
    'test/tooth/**/*.test.ts',
    'test/train/{interference,contactRatio,pair}.test.ts',
    'test/fit/{setRadii,skip}.test.ts',
    'test/solid/gearBody.test.ts',
    'test/proof/{surfaceDeviation,checks/trainRules,coupon/coupon}.test.ts',
    ...outside('{involute,undercut,baseTangent,overPins,rack,pairs,interference,meshedTeeth,section,trains}'),
  ],
  'lib/train': [
    'test/train/**/!(planShifted).test.ts',
    ...outside('{pairs,planetary,interference,rack,undercut,shifts}'),
  ],
  'lib/fit': [
    'test/fit/**/!(coverage|compensation).test.ts',
    'test/train/pair.test.ts',
    'test/solid/barBody.test.ts',
    'test/proof/{motion/playRecord,coupon/coupon}.test.ts',
    'test/solid/features/{crankHandle,trains}.test.ts',
    ...outside('{ring,carrier,rack,pairs,ordinalRegression,trains,coupon}'),
  ],
  'lib/proof': ['test/proof/**/*.test.ts', ...outside('{smallParts,interference,planetary,undercut}')],
  'lib/proof/checks': [
    'test/proof/checks/**/*.test.ts',
    'test/proof/{checks,trains,coupon/coupon}.test.ts',
    'test/proof/{safety,printing}/**/*.test.ts',
    ...outside('{interference,planetary,trains}'),
  ],
  'lib/solid': ['test/solid/**/*.test.ts', ...outside('{bodies,meshDistance}')],
  'lib/solid/sweep': [
    'test/solid/{gearBody,features/features,features/trains}.test.ts',
    'test/proof/{surfaceDeviation,mesh/selfIntersection}.test.ts',
    ...outside('{bodies,meshDistance,trains,section}'),
  ],
};

/** Globs of the tests for a folder or file of lib. */
export function testsOf(path) {
  const under = Object.keys(tests).filter((folder) => `${path}/`.startsWith(`${folder}/`));
  if (under.length === 0)
    throw new Error(`no tests are named for ${path}: add them to test/mutants/tests.mjs`);
  return tests[under.sort((a, b) => b.length - a.length)[0]];
}
