import { armRadius, shoulderRadius } from '../features/crank.js';
import { highestOn } from '../features/through.js';
import { FOOT_EDGE } from '../spec/rules/feet.js';
import type { CommonSpec } from '../spec/types.js';
import { liftOf } from './carrier/carrierSizes.js';
import type { FittedTrain, PlacedGear } from './train/fitTrain.js';

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

/** Layers between the arm and what it sweeps over, as between a carrier's plate and the gears under it. Common practice. */
const CLEAR_LAYERS = 2;
/** Something under the arm: from which radius on, and how high above the gear's face, mm. */
interface Obstacle {
  from: number;
  height: number;
}

/** The handle on a gear of a train, as asked or as drawn; null where none is asked for. */
export function handleSeat(train: FittedTrain): HandleSeat | null {
  const { spec, gears, carrier } = train;
  const own = gears.find(({ features }) => features.crank?.handle !== undefined);
  const crank = own?.features.crank;
  if (!own || crank?.handle === undefined) return null;
  const [{ name, centre }] = own.places;
  const lift = liftOf(carrier);
  const obstacles = [
    { from: 0, height: highestOn(own.features) },
    ...gears
      .filter((other) => other !== own)
      .map((other) => ({ from: nearestTo(centre, other), height: highestOn(other.features) })),
    ...carried(carrier, spec),
    ...gears.flatMap((one) => mounted(one, spec.faceWidth + lift)),
  ];
  // Through a plate's opening, which keeps the carrier's gap from a foot as wide as this.
  const foot = gears.some(({ orbits }) => orbits) ? FOOT_EDGE * spec.module : 0;
  return {
    gear: name,
    centre,
    face: lift + spec.faceWidth,
    standOff: standOff(spec, crank.handle + armRadius(crank), obstacles),
    radius: shoulderRadius(crank, own.profile.rootRadius - foot),
  };
}

/** From which radius about a handle's axis on a gear's face lies: as near as its roots ever come. */
function nearestTo([x, y]: readonly [number, number], { gear, profile, places }: PlacedGear): number {
  const [[cx, cy]] = places.map(({ centre }) => centre);
  const distance = Math.hypot(cx - x, cy - y);
  return gear.internal ? profile.rootRadius - distance : distance - profile.rootRadius;
}

/** The plate over the gears, with what stands on it. */
function carried(carrier: FittedTrain['carrier'], { faceWidth }: CommonSpec): Obstacle[] {
  const plate = carrier?.plates.find(({ side }) => side === 'above');
  if (!carrier || !plate) return [];
  const { boss } = carrier.carrier;
  const height = plate.to - faceWidth + (boss.shape === 'none' ? 0 : boss.height);
  return [{ from: plate.inner, height }];
}

/** The panel and the clamp ring on it, where they end above the gears' upper faces. */
function mounted({ profile, rim, features: { mount, flange } }: PlacedGear, face: number): Obstacle[] {
  if (!mount || !flange) return [];
  const panel = flange.thickness + mount.panel;
  return [
    { from: mount.hole / 2, height: panel - face },
    { from: profile.rootRadius + rim + mount.clearance, height: panel + mount.clamp - face },
  ];
}

/** Whole layers over the highest thing within the arm's reach, and the gap at least. */
function standOff({ fit, printer: { layer } }: CommonSpec, reach: number, obstacles: readonly Obstacle[]) {
  const highest = Math.max(0, ...obstacles.filter(({ from }) => from < reach).map(({ height }) => height));
  const clear = Math.max(fit.gap, CLEAR_LAYERS * layer);
  return Number((Math.ceil((highest + clear) / layer - 1e-9) * layer).toFixed(6));
}
