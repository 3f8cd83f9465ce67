import type { PlanetarySpec } from '../../spec/types.js';
import type { Gear } from '../../tooth/gear.js';
import type { ToothProfile } from '../../tooth/profile.js';
import type { OpeningSizes } from '../../train/opening.js';
import type { PairSizes } from '../../train/pair.js';
import type { CarrierSizes } from '../carrier/carrierSizes.js';
import type { GearEnd } from '../gearEnds.js';
import type { MadeRadii } from '../madeRadii.js';
import type { FittedTrain } from './fitTrain.js';
import { gearIn, type Train } from './train.js';

type BySet<T> = Record<'sun' | 'planet' | 'ring', T>;

/** A planetary train's numbers by the names of its gears. */
export interface SetNumbers {
  spec: PlanetarySpec;
  gears: BySet<Gear>;
  radii: BySet<MadeRadii>;
  /** Sun (1) and planet (2). */
  inner: PairSizes;
  /** Planet (1) and ring (2). */
  outer: PairSizes;
}

/** The same with teeth, in their places at z = 0. Lengths in mm, angles in radians. */
export interface FittedSet extends SetNumbers {
  profiles: BySet<ToothProfile>;
  /** Bevels and lips. */
  ends: BySet<GearEnd>;
  /** What carries the planets; null for nothing. */
  carrier: CarrierSizes | null;
  /** Sun to planet: where the planets are put. */
  centreDistance: number;
  /** Direction of each planet's axis, and the angle of one of its tooth centres. */
  planets: { angle: number; rotation: number }[];
  /** Angle of one of the ring's tooth centres. The sun has a tooth at angle 0. */
  ringRotation: number;
}

/** For what is asked of planetary sets alone. */
export function setOf(train: Train<PlanetarySpec>): SetNumbers {
  const [inner, outer] = train.meshes.map(({ pair }) => pair!);
  return {
    spec: train.spec,
    gears: bySet(train, ({ gear }) => gear),
    radii: bySet(train, ({ radii }) => radii),
    inner,
    outer,
  };
}

/** What the opening between its planets is asked with. */
export function openingSizes({ inner, radii }: SetNumbers): OpeningSizes {
  return {
    centreDistance: inner.centreDistance,
    planetTipRadius: radii.planet.tip,
    ringTipRadius: radii.ring.tip,
    sunTipRadius: radii.sun.tip,
  };
}

/** For what is asked of planetary sets alone. */
export function fittedSetOf(train: FittedTrain<PlanetarySpec>): FittedSet {
  const set = setOf(train);
  return {
    ...set,
    profiles: bySet(train, ({ profile }) => profile),
    ends: bySet(train, ({ end }) => end),
    carrier: train.carrier,
    centreDistance: set.inner.centreDistance,
    planets: gearIn(train, 'planet').places.map(({ direction, rotation }) => ({
      angle: direction,
      rotation,
    })),
    ringRotation: gearIn(train, 'ring').places[0].rotation,
  };
}

function bySet<G extends Train['gears'][number], T>(
  train: { gears: readonly G[] },
  read: (gear: G) => T,
): BySet<T> {
  const of = (part: string) => read(gearIn(train, part));
  return { sun: of('sun'), planet: of('planet'), ring: of('ring') };
}
