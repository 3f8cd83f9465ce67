import { compensationOf, drawnSet } from '../fit/compensation.js';
import { type FittedSet, fitSet } from '../fit/fitSet.js';
import { planetaryOnly } from '../spec/kinds.js';
import type { PlanetarySpec, Spec } from '../spec/types.js';
import { radians } from '../tooth/gear.js';
import { polar } from '../tooth/polar.js';
import type { ToothProfile } from '../tooth/profile.js';
import { type Additions, additionsTo, type Place } from './additions.js';
import type { Wall } from './blank.js';
import { boreOutline } from './bore.js';
import { gearBody } from './gearBody.js';
import type { Part } from './mesh.js';
import { placed } from './place.js';
import type { Sweep } from './sweep/helix.js';

/**
 * Every part of a set as a closed mesh in the place where it is printed: `sun`, `planet-1` …, `ring`. Drawn so that
 * the print comes out as the file asks: growth and shrinkage are compensated.
 * Axis of the set on z, bed at z = 0, the first planet on +x. mm.
 * @param additions solids of a script to be joined to parts and cut from them; the parts come as a promise then
 * @throws Refusal when the teeth cannot be made, or an addition is wrong
 */
export function buildSet(spec: Spec): Part[];
export function buildSet(spec: Spec, additions: Additions): Promise<Part[]>;
export function buildSet(spec: Spec, additions?: Additions): Part[] | Promise<Part[]> {
  return additions === undefined ? buildParts(spec) : buildChanged(spec, additions);
}

function buildParts(spec: Spec): Part[] {
  return buildPlanetary(planetaryOnly(spec));
}

async function buildChanged(spec: Spec, additions: Additions): Promise<Part[]> {
  const change = await additionsTo(additions);
  const { set } = drawnSet(planetaryOnly(spec), fitSet(planetaryOnly(spec)));
  return change(buildParts(spec), { planets: planetPlaces(set), scale: compensationOf(spec).scale });
}

/** Where every planet's own frame lies. */
export function planetPlaces({ planets, centreDistance }: FittedSet): Map<string, Place> {
  return new Map(
    planets.map(({ angle, rotation }, i) => [
      `planet-${i + 1}`,
      { rotation, centre: polar(centreDistance, angle) },
    ]),
  );
}

function buildPlanetary(spec: PlanetarySpec): Part[] {
  const drawn = drawnSet(spec, fitSet(spec));
  return buildFitted(drawn.spec, drawn.set);
}

/** `buildSet` for a set that is fitted as it is to be drawn (see `drawnSet`). */
export function buildFitted(spec: PlanetarySpec, set: FittedSet): Part[] {
  const [sun, planet, ring] = gearKinds(spec, set).map(({ profile, sweep, wall }) =>
    gearBody(profile, sweep, wall, spec.tolerance),
  );
  return [
    { name: 'sun', mesh: sun },
    ...set.planets.map(({ angle, rotation }, i) => ({
      name: `planet-${i + 1}`,
      mesh: placed(planet, rotation, polar(set.centreDistance, angle)),
    })),
    { name: 'ring', mesh: placed(ring, set.ringRotation, [0, 0]) },
  ];
}

/** One kind of gear of a set: its teeth, its sweep, its wall, and where the first part of that kind is put. */
export interface GearKind {
  /** Name of the first part of this kind. */
  first: string;
  profile: ToothProfile;
  sweep: Sweep;
  wall: Wall;
  /** Turn about its own axis, radians. */
  rotation: number;
  /** Place of its axis, mm. */
  centre: [number, number];
}

/** Sun, planet and ring, in this order. */
export function gearKinds(spec: PlanetarySpec, set: FittedSet): GearKind[] {
  const { profiles, planets, centreDistance, ringRotation } = set;
  const { sun, planet, ring } = profiles;
  return [
    {
      first: 'sun',
      profile: sun,
      sweep: sweepOf(spec, set, 'sun'),
      wall: { bore: boreOutline(spec.sun.bore, spec.tolerance) },
      rotation: 0,
      centre: [0, 0],
    },
    {
      first: 'planet-1',
      profile: planet,
      sweep: sweepOf(spec, set, 'planet'),
      wall: { bore: [] },
      rotation: planets[0].rotation,
      centre: polar(centreDistance, planets[0].angle),
    },
    {
      first: 'ring',
      profile: ring,
      sweep: sweepOf(spec, set, 'ring'),
      wall: { rimRadius: rimRadius(spec, ring) },
      rotation: ringRotation,
      centre: [0, 0],
    },
  ];
}

/** The kinds with every planet as one of its own, for planets that a script changed. */
export function kindsOfEachPlanet(kinds: readonly GearKind[], set: FittedSet): GearKind[] {
  const places = [...planetPlaces(set)];
  return kinds.flatMap((kind) =>
    kind.first === 'planet-1' ? places.map(([first, place]) => ({ ...kind, ...place, first })) : [kind],
  );
}

/** Outer radius of the ring, mm. */
export function rimRadius(spec: PlanetarySpec, ring: ToothProfile): number {
  return ring.rootRadius + spec.ring.rim;
}

/** How a gear of the set is swept: sun one hand, planets and ring the other. */
export function sweepOf(spec: PlanetarySpec, { ends }: FittedSet, part: 'sun' | 'planet' | 'ring'): Sweep {
  const { form, hand } = spec.helix;
  const other = hand === 'right' ? 'left' : 'right';
  return {
    form,
    faceWidth: spec.faceWidth,
    hand: part === 'sun' ? hand : other,
    ...ends[part],
    bevelAngle: radians(spec.bevel.angle),
  };
}
