import { AXLE } from '../spec/features/fasteners.js';
import type { CrankSocket, Text } from '../spec/features/types.js';
import { FOOT_EDGE } from '../spec/rules/room.js';
import type { CommonSpec, PlanetarySpec } from '../spec/types.js';
import { liftOf } from './carrier/carrierSizes.js';
import type { FittedSet } from './fitSet.js';
import type { FittedTrain, PlacedGear } from './trains/fitTrain.js';

/**
 * How a crank handle stands on its gear: on a shoulder around its peg, so that its arm turns clear of everything that
 * does not turn with that gear. Lengths in mm.
 */
export interface HandleSeat {
  /** The gear's name, and its axis. */
  gear: string;
  centre: readonly [number, number];
  /** Height of the end face that the shoulder stands on, above the bed. */
  face: number;
  /** From that face to the arm. */
  standOff: number;
  /** Of the shoulder. */
  radius: number;
}

/** The shoulder's ledge around the corners of the socket. Common practice. */
const LEDGE = 1.5;
/** Layers between the arm and what it sweeps over, as between a carrier's plate and the gears under it. Common practice. */
const CLEAR_LAYERS = 2;
/** Material around peg and axle, mm. */
const AROUND = 3;
const CORNER = { hexagon: 2 / Math.sqrt(3), square: Math.SQRT2 };

/** Something under the arm: from which radius on, and how high above the gear's face, mm. */
interface Obstacle {
  from: number;
  height: number;
}

/** Radius of the arm's rounded ends, mm. */
export function armRadius({ shape, acrossFlats }: CrankSocket): number {
  return Math.max((CORNER[shape] * acrossFlats) / 2, AXLE / 2) + AROUND;
}

/** Radius of the shoulder on a gear with such a root circle, mm: as narrow as serves, since letters may stand around it. */
export function shoulderRadius({ shape, acrossFlats, clearance }: CrankSocket, rootRadius: number): number {
  return Math.min((CORNER[shape] * (acrossFlats + clearance)) / 2 + LEDGE, rootRadius);
}

/** The handle on the sun of a set, as asked or as drawn; null where none is asked for. */
export function sunHandle(spec: PlanetarySpec, set: FittedSet): HandleSeat | null {
  const { sun, planets, ring, faceWidth } = spec;
  const { crank } = sun;
  if (crank?.handle === undefined) return null;
  const { carrier, profiles, centreDistance } = set;
  const lift = liftOf(carrier);
  const plate = carrier?.plates.find(({ side }) => side === 'above');
  const boss = carrier && carrier.carrier.boss.shape !== 'none' ? carrier.carrier.boss.height : 0;
  const obstacles: Obstacle[] = [
    { from: 0, height: raised(sun.text) },
    { from: centreDistance - profiles.planet.rootRadius, height: raised(planets.text) },
    { from: profiles.ring.rootRadius, height: raised(ring.text) },
    ...(plate ? [{ from: plate.inner, height: plate.to - faceWidth + boss }] : []),
    ...mounted(spec, profiles.ring.rootRadius + ring.rim, faceWidth + lift),
  ];
  // Through a plate's opening, which keeps the carrier's gap from a foot as wide as this.
  const most = profiles.sun.rootRadius - FOOT_EDGE * spec.module;
  return {
    gear: 'sun',
    centre: [0, 0],
    face: lift + faceWidth,
    standOff: standOff(spec, crank.handle + armRadius(crank), obstacles),
    radius: shoulderRadius(crank, most),
  };
}

/** The handle on a gear of a train; null where none is asked for. */
export function trainHandle({ spec, gears }: FittedTrain): HandleSeat | null {
  const one = gears.find(({ features }) => features.crank?.handle !== undefined);
  const crank = one?.features.crank;
  if (!one || crank?.handle === undefined) return null;
  const mate = gears.find((other) => other !== one);
  const obstacles = [
    { from: 0, height: raised(one.features.text) },
    ...(mate ? [{ from: nearestOf(mate), height: raised(mate.features.text) }] : []),
  ];
  return {
    gear: one.part,
    centre: one.centre,
    face: spec.faceWidth,
    standOff: standOff(spec, crank.handle + armRadius(crank), obstacles),
    radius: shoulderRadius(crank, one.profile.rootRadius),
  };
}

/** What turns beside the gear is passed over as high as it reaches, wherever the letters on it stand. */
function nearestOf({ gear, profile, centre }: PlacedGear): number {
  const distance = Math.hypot(...centre);
  return gear.internal ? profile.tipRadius - distance : distance - profile.rootRadius;
}

function raised(text: Text | undefined): number {
  return text?.style === 'raised' ? text.height : 0;
}

/** The panel and the clamp ring on it, where they end above the gears' upper faces. */
function mounted({ ring: { mount, flange } }: PlanetarySpec, bodyRadius: number, face: number): Obstacle[] {
  if (!mount || !flange) return [];
  const panel = flange.thickness + mount.panel;
  return [
    { from: mount.hole / 2, height: panel - face },
    { from: bodyRadius + mount.clearance, height: panel + mount.clamp - face },
  ];
}

/** Whole layers over the highest thing within the arm's reach, and the gap at least. */
function standOff({ fit, printer: { layer } }: CommonSpec, reach: number, obstacles: readonly Obstacle[]) {
  const highest = Math.max(0, ...obstacles.filter(({ from }) => from < reach).map(({ height }) => height));
  const clear = Math.max(fit.gap, CLEAR_LAYERS * layer);
  return Number((Math.ceil((highest + clear) / layer - 1e-9) * layer).toFixed(6));
}
