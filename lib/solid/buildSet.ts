import { type FittedSet, fitSet } from '../fit/fitSet.js';
import type { Spec } from '../spec/types.js';
import { radians } from '../tooth/gear.js';
import type { ToothProfile } from '../tooth/profile.js';
import { boreOutline } from './bore.js';
import { gearBody } from './gearBody.js';
import type { Mesh, Part } from './mesh.js';
import { placed } from './place.js';
import type { Sweep } from './sweep/helix.js';

/**
 * Every part of a set as a closed mesh in the place where it is printed: `sun`, `planet-1` …, `ring`.
 * Axis of the set on z, bed at z = 0, the first planet on +x. mm.
 * @throws Refusal when the teeth cannot be made
 */
export function buildSet(spec: Spec): Part[] {
  return buildFitted(spec, fitSet(spec));
}

/** `buildSet` for a set that is already fitted. */
export function buildFitted(spec: Spec, set: FittedSet): Part[] {
  const bodies = setBodies(spec, set);
  return [
    { name: 'sun', mesh: bodies.sun },
    ...set.planets.map(({ angle, rotation }, i) => ({
      name: `planet-${i + 1}`,
      mesh: placed(bodies.planet, rotation, [
        set.centreDistance * Math.cos(angle),
        set.centreDistance * Math.sin(angle),
      ]),
    })),
    { name: 'ring', mesh: placed(bodies.ring, set.ringRotation, [0, 0]) },
  ];
}

/** One body of each kind, in its own frame. */
function setBodies(spec: Spec, { profiles }: FittedSet): { sun: Mesh; planet: Mesh; ring: Mesh } {
  const body = (part: 'sun' | 'planet' | 'ring', wall: Parameters<typeof gearBody>[2]) =>
    gearBody(profiles[part], sweepOf(spec, profiles[part], part), wall, spec.tolerance);
  return {
    sun: body('sun', { bore: boreOutline(spec.sun.bore, spec.tolerance) }),
    planet: body('planet', { bore: [] }),
    ring: body('ring', { rimRadius: rimRadius(spec, profiles.ring) }),
  };
}

/** Outer radius of the ring, mm. */
export function rimRadius(spec: Spec, ring: ToothProfile): number {
  return ring.rootRadius + spec.ring.rim;
}

/** Share of the tooth, from tip to root, that a bevel may take; it must leave some involute in the end face. */
const MOST_BEVEL = 0.9;

/** How a gear of the set is swept: sun one hand, planets and ring the other. */
export function sweepOf(spec: Spec, profile: ToothProfile, part: 'sun' | 'planet' | 'ring'): Sweep {
  const { form, hand } = spec.helix;
  const other = hand === 'right' ? 'left' : 'right';
  return {
    form,
    faceWidth: spec.faceWidth,
    hand: part === 'sun' ? hand : other,
    bevelSize: Math.min(spec.bevel.size, MOST_BEVEL * Math.abs(profile.tipRadius - profile.formRadius)),
    bevelAngle: radians(spec.bevel.angle),
  };
}
