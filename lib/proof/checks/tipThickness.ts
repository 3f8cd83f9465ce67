import { drawnNumbers, type SizedSet } from '../../fit/compensation.js';
import { reliefs } from '../../fit/reliefs.js';
import { setNumbers } from '../../fit/setNumbers.js';
import { moduleGiven } from '../../spec/moduleGiven.js';
import { ranges } from '../../spec/ranges.js';
import { Refusal } from '../../spec/refusal.js';
import type { PlanetarySpec, Spec } from '../../spec/types.js';
import { type Gear, gearSizes } from '../../tooth/gear.js';
import { transverseThickness } from '../../tooth/thickness.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';
import { leastBy } from '../leastBy.js';

/** Thickness of the thinnest tooth tip in the normal section, as drawn, relief taken off: above zero, and a line wide. */
export function tipThickness(found: PlanFindings): Check {
  return tipThicknessOf(thinnestTip(found), found.spec, () => offer(found.spec));
}

/** The same of any teeth, by the thinnest tip as drawn, mm. */
export function tipThicknessOf(
  { part, thickness }: { part: string; thickness: number },
  { limits, fit }: Spec,
  offered: () => string,
): Check {
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
      ? `fit.gap ${fit.gap}: the teeth of the ${part} come to a point below their tip circle. ${offered()}`
      : `the thinnest tooth tip is ${thickness.toFixed(3)} mm (${part})`,
  };
}

/** The thinnest of the tooth tips as drawn, mm in the normal section. */
export function thinnestTip(found: SizedSet): { part: 'sun' | 'planet' | 'ring'; thickness: number } {
  const { spec, gears, radii } = drawnNumbers(found);
  const relief = reliefs(spec.fit);
  const tips = (['sun', 'planet', 'ring'] as const).map((part) => {
    return { part, thickness: normalTip(gears[part], radii[part].tip, relief[part]) };
  });
  return leastBy(tips, ({ thickness }) => thickness);
}

/** Thickness of a tooth at a radius in the normal section there, relief taken off, mm. */
export function normalTip(gear: Gear, radius: number, relief: number): number {
  const { referenceRadius, helixAngle } = gearSizes(gear);
  const cosHere = Math.cos(Math.atan((Math.tan(helixAngle) * radius) / referenceRadius));
  return transverseThickness(gear, radius, relief) * cosHere;
}

/** Modules up to this many times the file's are tried. */
const MOST_GROWTH = 4;

/** The largest smaller gap, and the smallest larger module, in hundredths, that leave a tip. */
function offer(spec: PlanetarySpec): string {
  return tipOffer(spec, leavesTip);
}

/** The same for any kind of file, within what it can hold. */
export function tipOffer<S extends Spec>(spec: S, leavesTip: (spec: S) => boolean): string {
  const { gap } = spec.fit;
  const { path, value } = moduleGiven(spec);
  const smaller = firstThat(gap, ranges.gap[0] - gap, (tried) =>
    leavesTip({ ...spec, fit: { ...spec.fit, gap: tried } }),
  );
  const larger = firstThat(
    spec.module,
    Math.min(ranges.module[1], MOST_GROWTH * spec.module) - spec.module,
    (tried) => leavesTip({ ...spec, module: tried }),
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

function leavesTip(spec: PlanetarySpec): boolean {
  try {
    return thinnestTip(setNumbers(spec)).thickness > 0;
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
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
