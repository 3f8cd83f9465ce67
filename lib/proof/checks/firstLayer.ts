import { compensationOf } from '../../fit/compensation.js';
import { unlessRefused } from '../../refusal.js';
import { buildSet } from '../../solid/buildSet.js';
import type { Part } from '../../solid/mesh.js';
import { deepestByFace } from '../../spec/bevelLimits.js';
import { resolveSpec } from '../../spec/resolveSpec.js';
import type { Spec } from '../../spec/types.js';
import type { Check } from '../check.js';
import { type FirstLayerGap, firstLayerGap } from '../printing/firstLayer.js';

/** Room beyond what the first layer takes up to which distances are looked for, mm. */
const REACH = 0.5;
/** Distances that differ by less are the same, mm. */
const ROUNDING = 1e-6;
/** What an offered gap leaves between first layers, mm. Common practice, no source. */
const SPARE = 0.02;

/**
 * Parts stay apart in the first layer, which stands out beyond the walls above it: the least distance there,
 * measured on the meshes, less what both walls stand out.
 */
export function firstLayer({ spec, parts }: { spec: Spec; parts: readonly Part[] }): Check {
  const taken = takenUp(spec);
  const found = inFirstLayer(spec, parts);
  const left = found?.left ?? null;
  const holds = left === null || left > 0;
  const where = found?.between.join(' and ');
  const changed = parts.some(({ added }) => added !== undefined);
  return {
    id: 'first-layer',
    holds,
    level: 'should',
    value: left,
    limit: 0,
    unit: 'mm',
    says:
      left === null
        ? `first layers are more than ${REACH} mm apart`
        : holds
          ? `first layers stay ${left.toFixed(3)} mm apart (${where}) when walls stand out by ${taken.toFixed(3)} mm each`
          : `first layers of ${where} run into each other by ${(-left).toFixed(3)} mm when walls stand out by ${taken.toFixed(3)} mm each${advice(spec, left, changed)}`,
  };
}

/** How far each wall stands out in the first layer beyond the drawn one, mm. */
function takenUp(spec: Spec): number {
  const { growth, firstLayerGrowth } = compensationOf(spec);
  return growth + firstLayerGrowth;
}

/** The nearest two parts in the first layer, and what is left between them on the print, mm. */
function inFirstLayer(spec: Spec, parts: readonly Part[]): (FirstLayerGap & { left: number }) | null {
  const taken = 2 * takenUp(spec);
  const { scale } = compensationOf(spec);
  const found = firstLayerGap(parts, spec.printer.layer, (Math.max(0, taken) + REACH) * scale);
  return found && { ...found, left: found.distance / scale - taken };
}

/** Offers are built and measured before they are made, without a script's solids: none where those are too near. */
function advice(spec: Spec, left: number, changed: boolean): string {
  if (changed && (inFirstLayer(spec, buildSet(spec))?.left ?? REACH) > left + ROUNDING)
    return '; what a script joined must keep farther from other parts there, or stand above the first layer';
  const { fit, bevel, module, rack, faceWidth } = spec;
  // As deep as the file's rules allow: the whole tooth, or what leaves a fifth of the face. See lib/spec/rules.
  const deepest = Math.min(rack.addendum * module + fit.gap, deepestByFace(faceWidth, bevel.angle));
  const size = Math.floor(deepest * 1000) / 1000;
  const gap = Math.ceil(100 * (fit.gap - left + SPARE)) / 100;
  const ways = [
    size > bevel.size && passes({ ...spec, bevel: { ...bevel, size } }) && `bevel.size ${size}`,
    passes({ ...spec, fit: { ...fit, gap } }) && `fit.gap ${gap}`,
  ].filter((way) => way !== false);
  return ways.length
    ? `; ${ways.join(' or ')} would keep them apart`
    : '; no bevel that fits these teeth and no gap near this one keeps them apart: a larger module would, or less printer.firstLayerGrowth';
}

function passes(changed: Spec): boolean {
  return unlessRefused(() => {
    const spec = resolveSpec(changed);
    const found = inFirstLayer(spec, buildSet(spec));
    return found === null || found.left > 0;
  }, false);
}
