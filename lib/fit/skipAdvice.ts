import { unlessRefused } from '../refusal.js';
import { MOST_GAP_PER_MODULE, ranges } from '../spec/ranges.js';
import type { PlanetarySpec } from '../spec/types.js';
import { usual } from '../spec/usual.js';
import { standardModules } from '../train/moduleSeries.js';
import { type SkipMaterial, skipOf } from './skip.js';
import { setOf } from './train/setOf.js';
import { trainNumbers } from './train/trainNumbers.js';

/** What a set must bear without a tooth skipping. */
export interface SkipLimits {
  /**
   * Pinch on the rim, N [50: the mean tip pinch of women, 11 lbf, of men 18 lbf (Mathiowetz and others 1985, from
   * memory). Compression tests of toys are harder: 110 N in EN 71-1, 89 to 133 N by age in 16 CFR 1500.51 to
   * 1500.53 (from memory)].
   */
  pinchForce: number;
  /** Torque on the sun, N m [0.5: a small knob turned with two fingers; common practice, no source]. */
  sunTorque: number;
}

export const usualSkipLimits: SkipLimits = {
  pinchForce: usual.pinchForce,
  sunTorque: usual.sunTorque,
};

/** Values that bear the limits, each alone with everything else as it is. mm. Missing where none was found. */
export interface SkipAdvice {
  rim?: number;
  faceWidth?: number;
  gap?: number;
  /** A standard one. */
  module?: number;
}

/** Rim and face width are not raised beyond this many times themselves: another set is the better answer. */
const MOST = { rim: 5, faceWidth: 3 };
/** The least gap that is offered, mm. Common practice, no source: finer ones fuse on most printers. */
const LEAST_GAP = 0.1;
/** Modules up to this many times larger or smaller are offered. */
const MODULE_RANGE = 2;

/** True when the set of a parameter file bears the limits; false when its teeth cannot be made. */
export function bears(spec: PlanetarySpec, material: Partial<SkipMaterial>, limits: SkipLimits): boolean {
  return unlessRefused(() => {
    const { pinchForce, sunTorque } = skipOf(setOf(trainNumbers(spec)), material);
    return pinchForce >= limits.pinchForce && sunTorque >= limits.sunTorque;
  }, false);
}

/**
 * The nearest values of rim, face width and gap that bear the limits, rounded to the safe side (rim 0.1 mm, face
 * width 0.5 mm, gap 0.01 mm), and the nearest standard module that does. Empty for a set that bears them.
 */
export function skipAdvice(
  spec: PlanetarySpec,
  material: Partial<SkipMaterial> = {},
  limits: SkipLimits = usualSkipLimits,
): SkipAdvice {
  if (bears(spec, material, limits)) return {};
  const passes = (changed: PlanetarySpec) => bears(changed, material, limits);
  const { rim } = spec.ring;
  const { gap } = spec.fit;
  const advice: SkipAdvice = {
    rim: nearest(rim, Math.min(ranges.rim[1], MOST.rim * rim), 0.1, (value) =>
      passes({ ...spec, ring: { ...spec.ring, rim: value } }),
    ),
    faceWidth: nearest(
      spec.faceWidth,
      Math.min(ranges.faceWidth[1], MOST.faceWidth * spec.faceWidth),
      0.5,
      (faceWidth) => passes({ ...spec, faceWidth }),
    ),
    gap:
      gap > LEAST_GAP
        ? nearest(gap, LEAST_GAP, 0.01, (value) => passes({ ...spec, fit: { ...spec.fit, gap: value } }))
        : undefined,
    module: nearestModule(spec, (module) => passes({ ...spec, module })),
  };
  return Object.fromEntries(Object.entries(advice).filter(([, value]) => value !== undefined));
}

/**
 * The multiple of `step` nearest to `from`, between it and `far`, at which `passes` holds: once it holds it holds
 * all the way to `far`.
 */
function nearest(
  from: number,
  far: number,
  step: number,
  passes: (value: number) => boolean,
): number | undefined {
  const toward = Math.sign(far - from);
  const at = (steps: number) => Number((steps * step).toFixed(6));
  // Rounded first, so that 0.3 / 0.1 is 3 steps and not 2.9999.
  const inSteps = (value: number) => Number((value / step).toFixed(6));
  let low = toward > 0 ? Math.floor(inSteps(from)) : Math.ceil(inSteps(from));
  let high = toward > 0 ? Math.floor(inSteps(far)) : Math.ceil(inSteps(far));
  if ((high - low) * toward <= 0 || !passes(at(high))) return undefined;
  while (Math.abs(high - low) > 1) {
    const middle = Math.round((low + high) / 2);
    if (passes(at(middle))) high = middle;
    else low = middle;
  }
  return at(high);
}

/** Larger modules bring deeper teeth, smaller ones a narrower ring, so that either direction may help. */
function nearestModule(spec: PlanetarySpec, passes: (module: number) => boolean): number | undefined {
  const apart = (module: number) => Math.abs(Math.log(module / spec.module));
  return standardModules
    .filter(
      (module) => apart(module) <= Math.log(MODULE_RANGE) && spec.fit.gap <= MOST_GAP_PER_MODULE * module,
    )
    .sort((a, b) => apart(a) - apart(b))
    .find(passes);
}
