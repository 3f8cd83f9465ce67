import type { ToothProfile } from '../../tooth/profile.js';
import type { PairSizes } from '../../train/pair.js';
import type { CarrierSizes } from '../carrier/carrierSizes.js';

/** One gear as far as its motions are concerned. Lengths in mm, angles in radians. */
export interface LooseGear {
  name: string;
  profile: ToothProfile;
  /** Place of its axis. Motions turn about this axis at mid face. */
  centre: readonly [number, number];
  /** Angle of one of its tooth centres at z = 0. */
  rotation: number;
  /** Hand of the helix (of its lower half when herringbone): 1 right, −1 left. */
  hand: 1 | -1;
  /** Radial cut-back of the tips at the end faces. */
  bevelSize: number;
  /** Whether cones close its tooth spaces, as steep as the bevels and beginning where they do. */
  lips: boolean;
}

/** What all gears that run together have in common. Lengths in mm, angles in radians. */
export interface LooseFrame {
  form: 'spur' | 'helical' | 'herringbone';
  faceWidth: number;
  /** Normal distance between neighbouring flanks. */
  gap: number;
  /** Angle between a bevel's cone and the end face. */
  bevelAngle: number;
}

/** A set whose parts may move within their play. Lengths in mm, angles in radians. */
export interface LooseSet extends LooseFrame {
  /** A loose part that carries the planets; its motions turn about the set's axis at mid face. */
  carrier: CarrierSizes | null;
  /** Height of the gears' lower end faces above the bed. Contacts count heights from these faces, meshes from the bed. */
  lift: number;
  sun: LooseGear;
  planets: LooseGear[];
  ring: LooseGear;
  /** Sun (1) and planet (2). */
  inner: PairSizes;
  /** Planet (1) and ring (2). */
  outer: PairSizes;
}

/** One transverse plane of a set. */
export interface Slice {
  z: number;
  /** 1 where the helix runs as `hand` says, −1 in the upper half of a herringbone. */
  way: 1 | -1;
}

/**
 * Transverse planes that stand for the whole face width: evenly over every stretch in which the helix runs one way,
 * and where the bevels begin. The middle of a herringbone counts twice, once for each half.
 * @param planes in half the face width, its ends included, at least 2
 */
export function slices(
  { form, faceWidth, bevelAngle }: LooseFrame,
  gears: readonly LooseGear[],
  planes: number,
): Slice[] {
  const most = Math.max(...gears.map(({ bevelSize }) => bevelSize));
  const height = most * Math.tan(bevelAngle);
  const stretches: [number, number, 1 | -1][] =
    form === 'herringbone'
      ? [
          [0, faceWidth / 2, 1],
          [faceWidth / 2, faceWidth, -1],
        ]
      : [[0, faceWidth, 1]];
  return stretches.flatMap(([from, to, way]) => {
    const steps = form === 'herringbone' ? planes - 1 : 2 * planes - 2;
    const at = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
    for (const z of [height / 2, height, faceWidth - height, faceWidth - height / 2])
      if (height > 0 && z > from && z < to) at.push(z);
    return at.map((z): Slice => ({ z, way }));
  });
}

/** Turn of a gear's outline for one mm along the axis at a slice, radians, with its sign. */
export function twistAt({ form }: LooseFrame, { profile, hand }: LooseGear, { way }: Slice): number {
  if (form === 'spur') return 0;
  return (hand * way * Math.tan(profile.sizes.helixAngle)) / profile.sizes.referenceRadius;
}

/** Angle of one of a gear's tooth centres in a slice. */
export function rotationAt(set: LooseFrame, gear: LooseGear, slice: Slice): number {
  const climb = slice.way === 1 ? slice.z : set.faceWidth - slice.z;
  return gear.rotation + slice.way * twistAt(set, gear, slice) * climb;
}

/** Tip radius in a slice, less where the bevel has cut it. */
export function tipRadiusAt(set: LooseFrame, { profile, bevelSize }: LooseGear, { z }: Slice): number {
  const fromFace = Math.min(z, set.faceWidth - z);
  const cut = Math.max(0, bevelSize - fromFace / Math.tan(set.bevelAngle));
  return profile.tipRadius + (profile.gear.internal ? cut : -cut);
}

/** Radius at which a gear's bevels, and its lips, begin in the end faces, mm. */
export function faceRadiusOf({ profile, bevelSize }: LooseGear): number {
  return profile.tipRadius + (profile.gear.internal ? bevelSize : -bevelSize);
}

/** A gear turned on with its train by a share of a pitch. @param way 1 counter-clockwise, −1 clockwise */
export function gearTurnedOn(gear: LooseGear, pitches: number, way: 1 | -1): LooseGear {
  return {
    ...gear,
    rotation: gear.rotation + (way * 2 * Math.PI * pitches) / gear.profile.gear.teeth,
  };
}

/** The set turned on by a share of a pitch, carrier held. */
export function turnedOn(set: LooseSet, pitches: number): LooseSet {
  return {
    ...set,
    sun: gearTurnedOn(set.sun, pitches, 1),
    planets: set.planets.map((planet) => gearTurnedOn(planet, pitches, -1)),
    ring: gearTurnedOn(set.ring, pitches, -1),
  };
}
