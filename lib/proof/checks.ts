import { arrangementOf } from './arrangements/arrangementOf.js';
import type { Check } from './check.js';
import { bed } from './checks/bed.js';
import { bodyGap } from './checks/bodyGap.js';
import { firstLayer } from './checks/firstLayer.js';
import { freeToTurn } from './checks/freeToTurn.js';
import { helixAccuracy } from './checks/helixAccuracy.js';
import { layers } from './checks/layers.js';
import { lineWidth } from './checks/lineWidth.js';
import { outlineChecks } from './checks/outlines.js';
import { overhang } from './checks/overhang.js';
import { plateClearance } from './checks/plateClearance.js';
import { rim } from './checks/rim.js';
import { rolling } from './checks/rolling.js';
import { selfIntersection } from './checks/selfIntersection.js';
import { smallParts } from './checks/smallParts.js';
import { thinFeatures } from './checks/thinFeatures.js';
import { tipThickness } from './checks/tipThickness.js';
import { undercut } from './checks/undercut.js';
import { watertight } from './checks/watertight.js';
import type { AllFindings, PlanFindings, ToothFindings } from './findings.js';

/** Checks on numbers alone; one that has nothing to look at is left out. */
export function planChecks(found: PlanFindings): Check[] {
  const { spec, numbers } = found;
  const own = arrangementOf(spec);
  const outside = numbers.gears.filter(({ gear }) => !gear.internal);
  return [
    ...own.assembly(found),
    ...(outside.length ? [undercut(spec, outside)] : []),
    tipThickness(found),
    lineWidth(found),
    ...rim(numbers),
    ...thinFeatures(found),
    layers(found),
    ...own.use(found),
    ...own.openings(found),
  ];
}

/** Checks on the outlines of the teeth; a gear without a mate has none to interfere with. */
export function toothChecks(found: ToothFindings): Check[] {
  return [
    ...outlineChecks(found.asked),
    ...(found.rolling.length ? [rolling(found)] : []),
    ...arrangementOf(found.spec).outlines(found),
  ];
}

/** Checks on the finished meshes; one gear by itself has no gap to keep. */
export function bodyChecks(found: AllFindings): Check[] {
  const { motion, bodies, rolling: rolled, drawn } = found;
  const meshed = drawn.meshes.length > 0;
  const least = meshed ? Math.min(...rolled.map((one) => one.least)) : null;
  return [
    ...(meshed ? [bodyGap(found)] : []),
    watertight(found),
    selfIntersection(found),
    helixAccuracy(found),
    overhang(found),
    ...(meshed ? [firstLayer(found)] : []),
    bed(found),
    smallParts(found),
    ...(motion.pairs.length ? [freeToTurn(motion, bodies, least)] : []),
    ...plateClearance(found),
    ...arrangementOf(found.spec).play(found),
  ];
}
