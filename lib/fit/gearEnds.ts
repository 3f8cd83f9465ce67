import { floorThousandth } from '../spec/nearest.js';
import { type Problem, Refusal } from '../spec/refusal.js';
import type { PlanetarySpec } from '../spec/types.js';
import { radians } from '../tooth/gear.js';
import type { ToothProfile } from '../tooth/profile.js';

/** The ends of one kind of gear's teeth. */
export interface GearEnd {
  /** How far the tips are cut back radially at the end faces, mm. */
  bevelSize: number;
  /** Whether cones close the tooth spaces. */
  lips: boolean;
}

/** Of each kind of gear. */
export type GearEnds = Record<'sun' | 'planet' | 'ring', GearEnd>;

/** Share of the tooth, from tip to where the involute ends, that a bevel may take: it leaves some in the end face. */
const MOST_BEVEL = 0.9;
/** And share that a bevel takes at least where it meets a lip. */
const LEAST_BEVEL = 0.1;
/** Least offered size of a bevel's steps, mm. */
const STEP = 0.05;

/**
 * How the teeth of a set end: bevels as asked, as far as they leave some involute in the end face. Where a gear has
 * lips, bevel and lip begin at one circle in the end face; it lies so far outside (for the sun: inside) the bevels of
 * the planets on the line of centres that the parallel cones keep the gap: gap / sin(bevel angle).
 * @throws Refusal where lips find no room, or do not reach over the planets' bevels
 * Source: plain geometry of two parallel cones.
 */
export function gearEnds(
  spec: PlanetarySpec,
  profiles: Record<'sun' | 'planet' | 'ring', ToothProfile>,
  centreDistance: number,
): GearEnds {
  const ends = {
    sun: plainEnd(spec, profiles.sun),
    planet: plainEnd(spec, profiles.planet),
    ring: plainEnd(spec, profiles.ring),
  };
  const { lips } = spec;
  if (!lips) return ends;
  for (const part of ['ring', 'sun'] as const) {
    if (lips.on !== 'both' && lips.on !== part) continue;
    const found = lipEnd(spec, part, profiles, centreDistance, ends.planet.bevelSize);
    if ('rule' in found) throw new Refusal([withOffer(spec, found, part, profiles, centreDistance)]);
    ends[part] = found;
  }
  return ends;
}

function plainEnd({ bevel }: PlanetarySpec, profile: ToothProfile): GearEnd {
  return { bevelSize: Math.min(bevel.size, MOST_BEVEL * involuteDepth(profile)), lips: false };
}

function involuteDepth({ tipRadius, formRadius }: ToothProfile): number {
  return Math.abs(tipRadius - formRadius);
}

/** The end with its lip, or what keeps it from being made. Depths count from the gear's tips to its roots. */
function lipEnd(
  { lips, bevel }: PlanetarySpec,
  part: 'ring' | 'sun',
  profiles: Record<'sun' | 'planet' | 'ring', ToothProfile>,
  centreDistance: number,
  planetBevel: number,
): GearEnd | Problem {
  const { gap, reach } = lips!;
  const profile = profiles[part];
  const away = part === 'ring' ? 1 : -1;
  const planetTip = centreDistance + away * profiles.planet.tipRadius;
  const depthOf = (radius: number) => away * (radius - profile.tipRadius);
  const byGap = depthOf(planetTip) - planetBevel + gap / Math.sin(radians(bevel.angle));
  const deepest = depthOf(profile.rootRadius);
  const byReach = reach === undefined ? byGap : deepest - reach;
  const involute = involuteDepth(profile);
  const size = Math.max(byGap, LEAST_BEVEL * involute, byReach);
  if (byReach < Math.max(byGap, LEAST_BEVEL * involute) - 1e-9)
    return {
      parameter: 'lips.reach',
      value: reach,
      rule: `must be at most ${floorThousandth(deepest - size)} mm on the ${part}: bevels and gap leave no more`,
      nearest: [floorThousandth(deepest - size)],
    };
  // A lip that ends beyond the bevels of the planets lies over nothing.
  const most = Math.min(MOST_BEVEL * involute, depthOf(planetTip) - gap);
  if (size <= most) return { bevelSize: size, lips: true };
  if (byReach > Math.max(byGap, most))
    return {
      parameter: 'lips.reach',
      value: reach,
      rule: `must be at least ${(Math.ceil(1000 * (deepest - most)) / 1000).toFixed(3)} mm on the ${part} to reach over the planets`,
      nearest: byGap <= most ? [Math.ceil(1000 * (deepest - most)) / 1000] : [],
    };
  return {
    parameter: 'bevel.size',
    value: bevel.size,
    rule: `leaves no room for lips on the ${part}: the planets' bevels must be ${(size - most).toFixed(2)} mm deeper, or lips.gap smaller`,
    nearest: [],
  };
}

/** A larger bevel that gives all lips room is offered, if there is one; it keeps to the rules of the file. */
function withOffer(
  spec: PlanetarySpec,
  problem: Problem,
  part: 'ring' | 'sun',
  profiles: Record<'sun' | 'planet' | 'ring', ToothProfile>,
  centreDistance: number,
): Problem {
  if (problem.parameter !== 'bevel.size') return problem;
  const { bevel, rack, module, fit, faceWidth } = spec;
  const most = Math.min(
    rack.addendum * module + fit.gap,
    (0.4 * faceWidth) / Math.tan(radians(bevel.angle)),
    MOST_BEVEL * involuteDepth(profiles.planet),
  );
  const both = spec.lips!.on === 'both' ? (['ring', 'sun'] as const) : [part];
  const fits = (size: number) =>
    both.every((one) => 'lips' in lipEnd(spec, one, profiles, centreDistance, size));
  for (let size = Math.ceil(bevel.size / STEP) * STEP; size <= most; size += STEP)
    if (fits(size)) return { ...problem, nearest: [floorThousandth(size)] };
  const smaller = [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1].map((share) =>
    floorThousandth(share * spec.lips!.gap),
  );
  const gap = smaller.find(
    (gap) =>
      gap >= 0.02 &&
      both.every(
        (one) =>
          'lips' in
          lipEnd(
            { ...spec, lips: { ...spec.lips!, gap } },
            one,
            profiles,
            centreDistance,
            plainEnd(spec, profiles.planet).bevelSize,
          ),
      ),
  );
  if (gap !== undefined)
    return { parameter: 'lips.gap', value: spec.lips!.gap, rule: problem.rule, nearest: [gap] };
  return { parameter: 'retention', value: spec.retention, rule: problem.rule, nearest: withoutLips(spec) };
}

function withoutLips({ helix }: PlanetarySpec): string[] {
  return [helix.form === 'herringbone' ? 'herringbone' : 'none'];
}
