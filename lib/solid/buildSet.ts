import { liftOf } from '../fit/carrier/carrierSizes.js';
import { compensationOf, drawnSet } from '../fit/compensation.js';
import { type FittedSet, fitSet } from '../fit/fitSet.js';
import { sunHandle } from '../fit/handleSeat.js';
import type { PlanetarySpec, Spec } from '../spec/types.js';
import { chordTolerance } from '../spec/workload.js';
import { radians } from '../tooth/gear.js';
import { polar } from '../tooth/polar.js';
import type { ToothProfile } from '../tooth/profile.js';
import { type Additions, additionsTo, type Place } from './additions.js';
import type { Wall } from './blank.js';
import { buildTrain } from './buildTrain.js';
import { carrierBody } from './carrier/carrierBody.js';
import { planetBore } from './carrier/planetBore.js';
import { clampInUse, clampRing } from './features/clampRing.js';
import { featureContext } from './features/context.js';
import { crankHandle, handleInUse } from './features/crankHandle.js';
import { gearBlank } from './features/gearBlank.js';
import { planetBlank } from './features/planetBlank.js';
import { ringBlank } from './features/ringBlank.js';
import { onFoot } from './feet.js';
import { gearBody } from './gearBody.js';
import type { InUse } from './inUse.js';
import type { Part } from './mesh.js';
import { placed, raised } from './place.js';
import { soundBody } from './soundBody.js';
import type { Sweep } from './sweep/helix.js';
import type { KnownPitches } from './teeth.js';

/**
 * Every part of a set as a closed mesh in the place where it is printed: `sun`, `planet-1` …, `ring`, and `carrier` if
 * there is one; other kinds as `buildTrain` says. Drawn so that the print comes out as the file asks: growth and shrinkage are compensated.
 * Axis of the set on z, bed at z = 0, the first planet on +x. mm.
 * @throws Refusal when the teeth cannot be made
 */
export function buildSet(spec: Spec): Part[];
/**
 * The same, with solids of a script joined to parts and cut from them; the parts come as a promise.
 * @param additions what is joined and what is cut
 * @throws Refusal when the teeth cannot be made, or an addition is wrong
 */
export function buildSet(spec: Spec, additions: Additions): Promise<Part[]>;
export function buildSet(spec: Spec, additions?: Additions): Part[] | Promise<Part[]> {
  return additions === undefined ? buildParts(spec) : buildChanged(spec, additions);
}

function buildParts(spec: Spec): Part[] {
  return spec.kind === 'planetary' ? buildPlanetary(spec) : buildTrain(spec);
}

async function buildChanged(spec: Spec, additions: Additions): Promise<Part[]> {
  const change = await additionsTo(additions);
  const planets =
    spec.kind === 'planetary' ? planetPlaces(drawnSet(spec, fitSet(spec)).set) : new Map<string, Place>();
  return change(buildParts(spec), { planets, scale: compensationOf(spec).scale });
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
  const { tolerance } = spec;
  const known: KnownPitches = new Map();
  const kinds = gearKinds(spec, set);
  const [sun, planet, ring] = PARTS.map((part, i) =>
    soundBody(part, tolerance, (fine) => {
      const at = fine === tolerance ? kinds : gearKinds({ ...spec, tolerance: fine }, set);
      const { profile, sweep, wall, lift } = at[i];
      return raised(gearBody(profile, sweep, wall, fine, known), lift);
    }),
  );
  const sizes = set.carrier;
  const carrier =
    sizes && soundBody('carrier', tolerance, (fine) => raised(carrierBody(sizes, set, fine), liftOf(sizes)));
  return [
    { name: 'sun', mesh: sun },
    ...set.planets.map(({ angle, rotation }, i) => ({
      name: `planet-${i + 1}`,
      mesh: placed(planet, rotation, polar(set.centreDistance, angle)),
    })),
    { name: 'ring', mesh: placed(ring, set.ringRotation, [0, 0]) },
    ...(carrier ? [{ name: 'carrier', mesh: carrier }] : []),
    ...looseParts(spec, set),
  ];
}

/** Keys of the gears in a file. */
const PARTS = ['sun', 'planets', 'ring'];

/** Parts without teeth that lie beside the set. */
function looseParts(spec: PlanetarySpec, set: FittedSet): Part[] {
  const { sun, ring, tolerance } = spec;
  const { mount, flange } = ring;
  const bodyRadius = rimRadius(spec, set.profiles.ring);
  const parts: Part[] = [];
  if (mount && flange)
    parts.push({
      name: 'clamp-ring',
      mesh: soundBody('ring.mount', tolerance, (fine) => clampRing(mount, flange, bodyRadius, fine)),
    });
  const { crank } = sun;
  const handle = crank?.handle;
  const seat = sunHandle(spec, set);
  if (crank && handle !== undefined && seat)
    parts.push({
      name: 'crank-handle',
      mesh: soundBody('sun.crank', tolerance, (fine) =>
        crankHandle(crank, handle, seat, edgeOf(spec, set), fine),
      ),
    });
  return parts;
}

/** How the loose parts of a set get from the bed to where they are used, by name. */
export function setInUse(spec: PlanetarySpec, set: FittedSet): Map<string, InUse> {
  const { sun, ring } = spec;
  const inUse = new Map<string, InUse>();
  if (ring.mount && ring.flange) inUse.set('clamp-ring', clampInUse(ring.mount, ring.flange));
  const seat = sunHandle(spec, set);
  if (sun.crank?.handle !== undefined && seat)
    inUse.set('crank-handle', handleInUse(sun.crank, sun.crank.handle, seat, edgeOf(spec, set)));
  return inUse;
}

/** How far a set reaches out on the bed, mm. */
function edgeOf(spec: PlanetarySpec, { profiles }: FittedSet): number {
  return Math.max(rimRadius(spec, profiles.ring), (spec.ring.flange?.diameter ?? 0) / 2);
}

/** One kind of gear of a set: its teeth, its sweep, its wall, and where the first part of that kind is put. */
export interface GearKind {
  /** Name of the first part of this kind. */
  first: string;
  profile: ToothProfile;
  sweep: Sweep;
  /** What its mesh keeps to, mm. */
  tolerance: number;
  wall: Wall;
  /** Turn about its own axis, radians. */
  rotation: number;
  /** Place of its axis, mm. */
  centre: [number, number];
  /** Height of its lower end face above the bed, mm. */
  lift: number;
}

/** Sun, planet and ring, in this order. */
export function gearKinds(spec: PlanetarySpec, set: FittedSet): GearKind[] {
  const { profiles, planets, centreDistance, ringRotation } = set;
  const { sun, planet, ring } = profiles;
  const { faceWidth, tolerance } = spec;
  const lift = liftOf(set.carrier);
  // As near to the teeth as their own chords.
  const fine = chordTolerance(spec.module, tolerance);
  const onFeet = (wall: Wall, radius = 0) => onFoot(wall, faceWidth, { height: lift, radius }, fine);
  const context = (
    path: string,
    profile: ToothProfile,
    part: 'sun' | 'planet' | 'ring',
    rotation: number,
    foot = 0,
  ) =>
    featureContext(
      foot ? { ...spec, faceWidth: faceWidth + foot } : spec,
      path,
      { teeth: profile.gear.teeth, rootRadius: profile.rootRadius },
      { rotation, mirrored: sweepOf(spec, set, part).hand === 'left' },
    );
  return [
    {
      first: 'sun',
      profile: sun,
      sweep: sweepOf(spec, set, 'sun'),
      tolerance,
      wall: onFeet(gearBlank(spec.sun, context('sun', sun, 'sun', 0, lift)), set.carrier?.hubRadius),
      rotation: 0,
      centre: [0, 0],
      lift,
    },
    {
      first: 'planet-1',
      profile: planet,
      sweep: sweepOf(spec, set, 'planet'),
      tolerance,
      wall: set.carrier?.pin
        ? planetBore(set.carrier, tolerance)
        : planetBlank(spec.planets, context('planets', planet, 'planet', planets[0].rotation)),
      rotation: planets[0].rotation,
      centre: polar(centreDistance, planets[0].angle),
      lift,
    },
    {
      first: 'ring',
      profile: ring,
      sweep: sweepOf(spec, set, 'ring'),
      tolerance,
      wall: onFeet(
        ringBlank(spec.ring, rimRadius(spec, ring), context('ring', ring, 'ring', ringRotation, lift)),
        set.carrier?.skirtRadius,
      ),
      rotation: ringRotation,
      centre: [0, 0],
      lift,
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
    bevelSize: ends[part].bevelSize,
    bevelAngle: radians(spec.bevel.angle),
    lips: ends[part].lips,
  };
}
