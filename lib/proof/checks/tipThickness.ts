import { drawnTrain } from '../../fit/train/drawnTrain.js';
import type { Train } from '../../fit/train/train.js';
import { trainNumbers } from '../../fit/train/trainNumbers.js';
import { unlessRefused } from '../../refusal.js';
import { moduleGiven } from '../../spec/moduleGiven.js';
import { ranges } from '../../spec/ranges.js';
import type { Spec } from '../../spec/types.js';
import { type Gear, gearSizes } from '../../tooth/gear.js';
import { transverseThickness } from '../../tooth/thickness.js';
import { barThickness } from '../barThickness.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';
import { leastBy } from '../leastBy.js';

/** Thickness of the thinnest tooth tip in the normal section, as drawn, relief taken off: above zero, and a line wide. */
export function tipThickness({ spec, drawnNumbers }: PlanFindings): Check {
  const { part, thickness } = thinnestTip(drawnNumbers);
  const { limits, fit } = spec;
  const pointed = !(thickness > 0);
  const limit = pointed ? 0 : limits.toothFeature;
  return {
    id: 'tip-thickness',
    holds: !pointed && thickness >= limit,
    level: pointed ? 'must' : 'should',
    value: thickness,
    limit,
    unit: 'mm',
    says: pointed
      ? `fit.gap ${fit.gap}: the teeth of the ${part} come to a point below their tip circle. ${tipOffer(spec)}`
      : `the thinnest tooth tip is ${thickness.toFixed(3)} mm (${part})`,
  };
}

/** The thinnest of the tooth tips of a train as drawn, mm in the normal section. */
export function thinnestTip({ gears, bar }: Train): { part: string; thickness: number } {
  const tips: { part: string; thickness: number }[] = gears.map(({ part, gear, radii, relief }) => ({
    part,
    thickness: normalTip(gear, radii.tip, relief),
  }));
  if (bar) tips.push({ part: 'bar', thickness: barThickness(bar, bar.tip) });
  return leastBy(tips, ({ thickness }) => thickness);
}

/** Thickness of a tooth at a radius in the normal section there, relief taken off, mm. */
function normalTip(gear: Gear, radius: number, relief: number): number {
  const { referenceRadius, helixAngle } = gearSizes(gear);
  const cosHere = Math.cos(Math.atan((Math.tan(helixAngle) * radius) / referenceRadius));
  return transverseThickness(gear, radius, relief) * cosHere;
}

/** Modules up to this many times the file's are tried. */
const MOST_GROWTH = 4;

/** The largest smaller gap, and the smallest larger module, in hundredths, that leave a tip, within what a file can hold. */
export function tipOffer<S extends Spec>(spec: S, leaves: (spec: S) => boolean = leavesTip): string {
  const { gap } = spec.fit;
  const { path, value } = moduleGiven(spec);
  const smaller = firstThat(gap, ranges.gap[0] - gap, (tried) =>
    leaves({ ...spec, fit: { ...spec.fit, gap: tried } }),
  );
  const larger = firstThat(
    spec.module,
    Math.min(ranges.module[1], MOST_GROWTH * spec.module) - spec.module,
    (tried) => leaves({ ...spec, module: tried }),
  );
  const least = smaller === null ? 0 : Math.floor(smaller * 100 + 1e-6) / 100;
  const ways = [
    least >= ranges.gap[0] && `fit.gap ${least.toFixed(2)}`,
    larger !== null && `${path} ${(Math.ceil((100 * larger * value) / spec.module - 1e-6) / 100).toFixed(2)}`,
  ].filter(Boolean);
  return ways.length
    ? `Nearest that leaves a tip: ${ways.join(' or ')}; less profile shift or a larger helix angle helps too`
    : 'Less profile shift or a larger helix angle leaves a tip';
}

function leavesTip(spec: Spec): boolean {
  return unlessRefused(() => thinnestTip(drawnTrain(trainNumbers(spec))).thickness > 0, false);
}

/** The value nearest to `from`, towards `from + way`, that works, when the far end does; null when it does not. */
function firstThat(from: number, way: number, works: (value: number) => boolean): number | null {
  let near = 0;
  let far = 0.999;
  if (!works(from + way * far)) return null;
  for (let step = 0; step < 24; step++) {
    const middle = (near + far) / 2;
    if (works(from + way * middle)) far = middle;
    else near = middle;
  }
  return from + way * far;
}
