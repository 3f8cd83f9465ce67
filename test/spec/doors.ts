import { readGaps } from '../../lib/fit/coupon/readGaps.js';
import { entryProblems } from '../../lib/fit/trials/entryProblems.js';
import { logSchema } from '../../lib/fit/trials/trialSchema.js';
import type { Problem } from '../../lib/refusal.js';
import { resolveProfile } from '../../lib/spec/profileFile.js';
import type { WantedSets } from '../../lib/train/planWanted.js';
import { readWanted } from '../../lib/train/readWanted.js';
import { solveShifts } from '../../lib/train/solveShifts.js';
import { type File, problemsOf, spinner, withValue } from './table.js';

/** A value tried at a place: what that place finds wrong with it. */
export type Door = (value: number) => Pick<Problem, 'rule'>[];

export const only = (problems: readonly Problem[], ...parameters: string[]) =>
  problems.filter(({ parameter }) => parameters.includes(parameter));
/** A file in which no rule between values comes before the range itself. */
export const roomy = (): File => ({
  ...spinner(),
  module: 6,
  printer: { nozzle: 2, bed: {} },
  fit: { gap: 1.2 },
  planets: { teeth: 9, count: 3 },
});
export const file =
  (path: string, base: () => File = roomy): Door =>
  (value) =>
    only(problemsOf(withValue(path, value, base())), path);
const plan =
  (key: string, more: WantedSets = { module: 6, gap: 1 }): Door =>
  (value) =>
    only(problemsOf({ ...more, [key]: value }, readWanted as never), key);
const ends =
  (key: string): Door =>
  (value) =>
    only(
      problemsOf({ [key]: { least: value, most: value } }, readWanted as never),
      `${key}.least`,
      `${key}.most`,
    );
const trial =
  (key: string): Door =>
  (value) => {
    const data = { trials: [{ gap: 1, outcome: 'free', [key]: value }] };
    return only(entryProblems(logSchema.safeParse(data).error?.issues ?? [], data), `trials[1].${key}`);
  };
const profile =
  (path: string): Door =>
  (value) =>
    only(problemsOf(withValue(path, value, {}), resolveProfile), `profile.${path}`);
const form = { rack: { addendum: 1, dedendum: 1.25, fillet: 0.1 }, pressureAngle: 20, helixAngle: 0 };
export const shifts =
  (path: string): Door =>
  (value) => {
    const asked = withValue(path, value, {
      sunTeeth: 20,
      planetTeeth: 9,
      ringTeeth: 38,
      ...structuredClone(form),
    });
    const { sunTeeth, planetTeeth, ringTeeth, ...rest } = asked;
    return only(
      problemsOf({ sunTeeth, planetTeeth, ringTeeth }, ((c: never) =>
        solveShifts(c, rest as never)) as never),
      path,
    );
  };
const coupon: Door = (value) => problemsOf(`${value.toFixed(2)},1`, readGaps as never);
const onRack = (key: string) => (value: number) => {
  const rack = { addendum: 1, dedendum: 1.25, fillet: 0.1, [key]: value };
  return only(problemsOf({ rack }, readWanted as never), `rack.${key}`);
};
export const deep = (key: string) => () =>
  withValue('rack', { addendum: 1, dedendum: 1.25, fillet: 0.1, [key]: 1 }, roomy());

/** Each parameter that more than the file takes: the step beyond its range, and where values of it are taken. */
export const shared: [path: string, step: number, doors: Record<string, Door>][] = [
  [
    'fit.gap',
    0.01,
    {
      file: file('fit.gap'),
      plan: plan('gap', { module: 6 }),
      coupon,
      trial: trial('gap'),
      profile: profile('fit.gap'),
    },
  ],
  ['faceWidth', 0.001, { file: file('faceWidth'), plan: plan('faceWidth') }],
  ['module', 0.001, { file: file('module'), plan: plan('module', { gap: 0.02 }), span: ends('module') }],
  [
    'pressureAngle',
    0.001,
    { file: file('pressureAngle'), plan: plan('pressureAngle'), shifts: shifts('pressureAngle') },
  ],
  [
    'helix.angle',
    0.001,
    { file: file('helix.angle'), plan: plan('helixAngle'), shifts: shifts('helixAngle') },
  ],
  [
    'rack.addendum',
    0.001,
    {
      file: file('rack.addendum', deep('addendum')),
      plan: onRack('addendum'),
      shifts: shifts('rack.addendum'),
    },
  ],
  [
    'rack.dedendum',
    0.001,
    {
      file: file('rack.dedendum', deep('dedendum')),
      plan: onRack('dedendum'),
      shifts: shifts('rack.dedendum'),
    },
  ],
  [
    'rack.fillet',
    0.001,
    { file: file('rack.fillet', deep('fillet')), plan: onRack('fillet'), shifts: shifts('rack.fillet') },
  ],
  [
    'sun.teeth',
    1,
    { file: file('sun.teeth'), plan: plan('sunTeeth'), span: ends('sunTeeth'), shifts: shifts('sunTeeth') },
  ],
  [
    'planets.teeth',
    1,
    { file: file('planets.teeth'), plan: plan('planetTeeth'), shifts: shifts('planetTeeth') },
  ],
  [
    'ring.teeth',
    1,
    {
      file: file('ring.teeth'),
      plan: plan('ringTeeth'),
      span: ends('ringTeeth'),
      shifts: shifts('ringTeeth'),
    },
  ],
  ['planets.count', 1, { file: file('planets.count'), plan: plan('planets'), span: ends('planets') }],
  ['ring.rim', 0.001, { file: file('ring.rim'), plan: plan('rim') }],
  [
    'printer.bed.width',
    0.001,
    { file: file('printer.bed.width'), plan: plan('bed'), profile: profile('printer.bed.width') },
  ],
  [
    'printer.nozzle',
    0.001,
    { file: file('printer.nozzle'), plan: plan('nozzle'), profile: profile('printer.nozzle') },
  ],
  [
    'printer.layer',
    0.001,
    { file: file('printer.layer'), trial: trial('layer'), profile: profile('printer.layer') },
  ],
  [
    'printer.growth',
    0.001,
    { file: file('printer.growth'), trial: trial('growth'), profile: profile('printer.growth') },
  ],
  [
    'fit.gapShare',
    0.001,
    { file: file('fit.gapShare'), profile: profile('fit.gapShare'), shifts: shifts('gapShare') },
  ],
];
