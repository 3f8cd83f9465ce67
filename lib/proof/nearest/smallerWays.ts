import { gearFeatures, ringFeatures } from '../../features/index.js';
import { featuresOf } from '../../features/through.js';
import { barOf, gearsOf } from '../../spec/kinds.js';
import { gapChange } from '../../spec/measuredGaps.js';
import { moduleGiven } from '../../spec/moduleGiven.js';
import { floorThousandth } from '../../spec/nearest.js';
import { isMapping } from '../../spec/plainData.js';
import { ranges } from '../../spec/ranges.js';
import { externalGears } from '../../spec/rules/trains.js';
import type { TrainSpec } from '../../spec/types.js';
import { withoutDerived } from '../../spec/withoutDerived.js';
import { along, alongWhole, type Change, type Way, type Ways } from './changes.js';

/** Steps by which the module falls where nothing else finds room. */
const STEPS = 20;
/** Teeth with which gears and bars find room on the smallest bed. */
const FEW_TEETH = { gear: 18, bar: 3 };

/** What may be made smaller about a pair, a rack and pinion or one gear that finds no room on the bed. */
export function smallerWays(spec: TrainSpec): Ways {
  const { faceWidth, fit, printer } = spec;
  const { path, value } = moduleGiven(spec);
  const low = { faceWidth: floorThousandth(Math.min(faceWidth, 0.8 * printer.bed.height)) };
  const loose = gapChange(spec, Math.min(fit.gap, 0.05));
  const plain = { ...low, ...loose, ...plainForm(spec) };
  return {
    single: [
      along(path, value, ranges.module[0]),
      along('faceWidth', faceWidth, ranges.faceWidth[0]),
      ...sizesOf(spec),
    ],
    counts: () =>
      Array.from({ length: STEPS }, (_, i): Change => ({ [path]: floorThousandth(value * 0.8 ** (i + 1)) })),
    bases: [{}, low, { ...low, ...loose }, plain, { ...plain, ...fewTeeth(spec) }],
  };
}

/** Every size of a file that parts grow with. */
function sizesOf(spec: TrainSpec): Way[] {
  const outside = externalGears(spec).flatMap(([part, gear]) => [
    alongWhole(`${part}.teeth`, gear.teeth, ranges.teeth[0]),
    ...widths(part, gear),
  ]);
  const ring = ringOf(spec);
  const inside = ring && [
    alongWhole(`${ring.part}.teeth`, ring.teeth, ranges.ringTeeth[0]),
    along(`${ring.part}.rim`, ring.rim, ranges.rim[0]),
    ...widths(ring.part, ring),
  ];
  const bar = barOf(spec);
  const sizes = bar && [
    along('bar.length', bar.length, ranges.barLength[0]),
    alongWhole('bar.teeth', bar.teeth, ranges.barTeeth[0]),
    along('bar.backing', bar.backing, ranges.rim[0]),
  ];
  return [...(sizes ?? []), ...outside, ...(inside ?? [])];
}

/** Sizes of its features that a gear grows with. */
function widths(part: string, gear: object): Way[] {
  return featuresOf(gear).flatMap(({ key, kind: { widens }, own }) => {
    const size: unknown = widens && Reflect.get(own, widens.key);
    return widens && typeof size === 'number'
      ? [along(`${part}.${key}.${widens.key}`, size, widens.least)]
      : [];
  });
}

/** No features, and walls and lengths as they follow from the teeth, as far as the file gives them. */
export function plainForm(spec: TrainSpec): Change {
  const form: Change = {};
  for (const [part] of externalGears(spec))
    for (const key of ['bore', ...Object.keys(gearFeatures)]) form[`${part}.${key}`] = undefined;
  const ring = ringOf(spec);
  if (ring) for (const key of ['rim', ...Object.keys(ringFeatures)]) form[`${ring.part}.${key}`] = undefined;
  if (barOf(spec)) for (const key of ['length', 'backing']) form[`bar.${key}`] = undefined;
  return Object.fromEntries(Object.entries(form).filter(([path]) => isGiven(spec, path)));
}

/** Whether the file says it, in place of what would follow from other values. */
function isGiven(spec: TrainSpec, path: string): boolean {
  const [part, key] = path.split('.');
  const group = withoutDerived(spec)[part];
  const value = isMapping(group) ? group[key] : undefined;
  return value !== undefined && !(isMapping(value) && value.shape === 'none');
}

function fewTeeth(spec: TrainSpec): Change {
  const gears = externalGears(spec).map(([part, { teeth }]) => [
    `${part}.teeth`,
    Math.min(teeth, FEW_TEETH.gear),
  ]);
  const ring = ringOf(spec);
  if (ring) gears.push([`${ring.part}.teeth`, Math.min(ring.teeth, 2 * FEW_TEETH.gear)]);
  const bar = barOf(spec);
  if (bar) gears.push(['bar.teeth', Math.min(bar.teeth, FEW_TEETH.bar)]);
  return Object.fromEntries(gears);
}

function ringOf(spec: TrainSpec) {
  return gearsOf(spec).find((gear) => gear.internal);
}
