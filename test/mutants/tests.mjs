// Which tests a folder's mutants are held against. A mutant that lives sees every one of them, so these are the folder's own
// tests and those near it that are quick. Left out everywhere: what starts the built command, a browser, an installed
// package or workers. What these do not notice the rest of the tests still may.

const outside = (...names) => names.map((name) => `test/outside/${name}.test.ts`);

/** Folder or file → globs of its tests; the longest name that a path begins with counts. */
const tests = {
  'lib/tooth': [
    'test/tooth/**/*.test.ts',
    'test/train/{interference,contactRatio,pair}.test.ts',
    'test/fit/{setRadii,skip}.test.ts',
    'test/solid/{gearBody,barBody}.test.ts',
    ...outside('{involute,undercut,baseTangent,overPins,rack,pairs,interference,meshedTeeth,trains}'),
  ],
  'lib/train': [
    'test/train/!(planShifted|solveShifts).test.ts',
    ...outside('{pairs,planetary,interference,rack,undercut}'),
  ],
  'lib/train/shifts': [
    'test/train/shifts/*.test.ts',
    'test/train/{solveShifts,setGears,shiftedSet,nearestShiftedSets}.test.ts',
    ...outside('shifts'),
  ],
  'lib/train/solveShifts.ts': ['test/train/{solveShifts,setGears,nearestShiftedSets}.test.ts'],
  'lib/train/planShifted.ts': ['test/train/{planShifted,nearestShiftedSets}.test.ts'],
  'lib/features': [
    'test/features/*.test.ts',
    'test/solid/features/*.test.ts',
    'test/spec/{refusals,defaults,limits}.test.ts',
  ],
  'lib/fit': [
    'test/fit/*.test.ts',
    'test/fit/carrier/carrierSizes.test.ts',
    'test/solid/features/{crankHandle,trains}.test.ts',
    ...outside('{carrier,rack,pairs,trains}'),
  ],
  'lib/fit/carrier': [
    'test/{fit,solid}/carrier/*.test.ts',
    'test/features/drawnFeatures.test.ts',
    'test/fit/limitsTold.test.ts',
    ...outside('carrier'),
  ],
  'lib/fit/coupon': [
    'test/{fit,proof}/coupon/*.test.ts',
    'test/fit/limitsTold.test.ts',
    ...outside('coupon'),
  ],
  'lib/fit/play': [
    'test/fit/play/*.test.ts',
    'test/proof/motion/*.test.ts',
    'test/proof/checks/heldTogether.test.ts',
    ...outside('{captured,lips}'),
  ],
  'lib/fit/ring': ['test/fit/{ring/*,skip,limitsTold}.test.ts', ...outside('ring')],
  'lib/fit/train': [
    'test/fit/train/*.test.ts',
    'test/solid/{barBody,features/trains}.test.ts',
    'test/proof/checks/trainRules.test.ts',
    ...outside('{trains,rack,pairs}'),
  ],
  'lib/fit/trials': [
    'test/fit/trials/!(coverage).test.ts',
    'test/write/{profileText,trialSheet}.test.ts',
    ...outside('ordinalRegression'),
  ],
  'lib/proof': ['test/proof/**/*.test.ts', ...outside('{smallParts,interference,planetary,undercut}')],
  'lib/proof/checks': [
    'test/proof/checks/*.test.ts',
    'test/proof/{checks,trains,coupon/coupon}.test.ts',
    'test/proof/{safety,printing}/*.test.ts',
    'test/fit/skip.test.ts',
    ...outside('{interference,planetary,captured}'),
  ],
  'lib/solid': ['test/solid/**/*.test.ts', ...outside('{bodies,meshDistance}')],
  'lib/solid/sweep': [
    'test/solid/gearBody.test.ts',
    'test/solid/sweep/*.test.ts',
    'test/proof/surfaceDeviation.test.ts',
    ...outside('bodies'),
  ],
};

/** The longest name above that a file of lib belongs to. */
export function groupOf(file) {
  const names = Object.keys(tests).filter((name) => `${file}/`.startsWith(`${name}/`));
  if (names.length === 0)
    throw new Error(`no tests are named for ${file}: add them to test/mutants/tests.mjs`);
  return names.reduce((a, b) => (b.length > a.length ? b : a));
}

export const testsOf = (group) => tests[group];
