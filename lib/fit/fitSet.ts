import type { PlanetarySpec } from '../spec/types.js';
import { type ToothProfile, toothProfile } from '../tooth/profile.js';
import { planetPlaces } from '../train/assembly.js';
import { type PairSizes, pairSizes } from '../train/pair.js';
import { phases } from '../train/phases.js';
import { type SetGears, setGears } from '../train/setGears.js';
import { setBodyRoom } from './bodyRoom.js';
import { type CarrierSizes, carrierSizes } from './carrier/carrierSizes.js';
import { type GearEnds, gearEnds } from './gearEnds.js';
import { reliefs } from './reliefs.js';
import { type SetRadii, setRadii } from './setRadii.js';

/** The gears of a set with their gap and their places at z = 0. Lengths in mm, angles in radians. */
export interface FittedSet {
  gears: SetGears;
  radii: SetRadii;
  profiles: { sun: ToothProfile; planet: ToothProfile; ring: ToothProfile };
  /** Bevels and lips. */
  ends: GearEnds;
  /** What carries the planets; null for nothing. */
  carrier: CarrierSizes | null;
  /** Sun (1) and planet (2), sizes as made. */
  inner: PairSizes;
  /** Planet (1) and ring (2), sizes as made. */
  outer: PairSizes;
  /** Sun to planet: where the planets are put. */
  centreDistance: number;
  /** Direction of each planet's axis, and the angle of one of its tooth centres. */
  planets: { angle: number; rotation: number }[];
  /** Angle of one of the ring's tooth centres. The sun has a tooth at angle 0. */
  ringRotation: number;
}

/**
 * Teeth with their relief, and every gear in the place where all meshes meet at once.
 * A set that breaks the assembly rule is placed all the same, each planet by its own mesh with the sun and the
 * ring by the first planet: the checks say what is wrong with it.
 * @param madeRadii tip and root radii where they are known [from `setRadii`]
 * @param wall least width of the walls of a carrier, mm [that of two lines]
 * @throws Refusal when a tooth comes to a point, a pair has no working pressure angle or lips, a carrier,
 * bores or features find no room
 */
export function fitSet(spec: PlanetarySpec, madeRadii?: SetRadii, wall?: number): FittedSet {
  const gears = setGears(spec);
  const radii = madeRadii ?? setRadii(spec, gears);
  const relief = reliefs(spec.fit);
  const sun = toothProfile(gears.sun, {
    relief: relief.sun,
    tipRadius: radii.sun.tip,
    rootRadius: radii.sun.root,
    activeRadius: radii.sun.active,
  });
  const planet = toothProfile(gears.planet, {
    relief: relief.planet,
    tipRadius: radii.planet.tip,
    rootRadius: radii.planet.root,
    activeRadius: radii.planet.active,
  });
  const ring = toothProfile(gears.ring, {
    relief: relief.ring,
    tipRadius: radii.ring.tip,
    rootRadius: radii.ring.root,
    activeRadius: radii.ring.active,
  });
  const inner = pairSizes(gears.sun, gears.planet, {
    tipRadius1: sun.tipRadius,
    tipRadius2: planet.tipRadius,
    formRadius1: sun.formRadius,
    formRadius2: planet.formRadius,
  });
  const outer = pairSizes(gears.planet, gears.ring, {
    tipRadius1: planet.tipRadius,
    tipRadius2: ring.tipRadius,
    formRadius1: planet.formRadius,
    formRadius2: ring.formRadius,
  });
  const teeth = {
    sunTeeth: spec.sun.teeth,
    planetTeeth: spec.planets.teeth,
    ringTeeth: spec.ring.teeth,
  };
  const places = planetPlaces(spec.sun.teeth, spec.ring.teeth, spec.planets.count);
  const turns = places.map((place) => phases(teeth, [place]));
  const { centreDistance } = inner;
  if (!madeRadii) setBodyRoom(spec, radii, [centreDistance, outer.centreDistance]);
  const profiles = { sun, planet, ring };
  const ends = gearEnds(spec, profiles, centreDistance);
  const planets = places.map((place, i) => ({
    angle: (place * Math.PI) / 180,
    rotation: turns[i].planets[0],
  }));
  return {
    gears,
    radii,
    profiles,
    ends,
    carrier: carrierSizes(spec, { profiles, ends, centreDistance, planets }, wall),
    inner,
    outer,
    centreDistance,
    planets,
    ringRotation: turns[0].ringTooth,
  };
}
