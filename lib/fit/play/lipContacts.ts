import type { Contact, Motion } from './contact.js';
import {
  faceRadiusOf,
  type LooseGear,
  type LooseSet,
  rotationAt,
  type Slice,
  tipRadiusAt,
} from './looseSet.js';
import { bent, movedX, movedY, movedZ, writeSlopes } from './pointMotion.js';
import { tipHalfAngle } from './tipContacts.js';

/** Teeth to each side of the line of centres that are looked at. */
const BESIDE = 1;
/** Heights within a bevel, as shares of it. */
const HEIGHTS = [0, 0.25, 0.5, 0.75, 1];
/** The upper ones, which are beside the lip still when the end of the tooth has sunk below its edge. */
const UPPER = [0.6, 0.8, 1];

/**
 * Where the bevelled ends of a planet's teeth would touch the lips of sun or ring: the point of each bevel's arc that
 * is nearest to the line of centres, at a few heights of both ends, against the lip's cone.
 * @param endless the cones go on beyond the lips' edges: what far motions need, which come in one long step and must then
 * be asked whether they went past (`passesLips`)
 */
export function lipContacts(set: LooseSet, planet: LooseGear, mate: LooseGear, endless: boolean): Contact[] {
  if (!mate.lips || planet.bevelSize === 0) return [];
  const height = planet.bevelSize * Math.tan(set.bevelAngle);
  return (endless ? UPPER : HEIGHTS).flatMap((share) =>
    ([1, -1] as const).flatMap((up) =>
      Array.from({ length: 2 * BESIDE + 1 }, (_, i) =>
        lipContact(set, planet, mate, share * height, up, i - BESIDE, endless),
      ),
    ),
  );
}

/** The transverse plane at a height above the lower end, or below the upper one. */
function sliceAt({ faceWidth, form }: LooseSet, fromFace: number, up: 1 | -1): Slice {
  return up === 1
    ? { z: fromFace, way: 1 }
    : { z: faceWidth - fromFace, way: form === 'herringbone' ? -1 : 1 };
}

/** The tips of a planet in a slice, and the way to its mate. mm, radians. */
interface TipsAt {
  towards: number;
  pitch: number;
  /** Angle of one tooth from the line of centres. */
  first: number;
  half: number;
  radius: number;
}

function tipsAt(set: LooseSet, planet: LooseGear, mate: LooseGear, slice: Slice): TipsAt {
  const toMate = Math.atan2(mate.centre[1] - planet.centre[1], mate.centre[0] - planet.centre[0]);
  // A planet is nearest to the ring on the side away from the ring's axis.
  const towards = mate.profile.gear.internal ? toMate + Math.PI : toMate;
  const pitch = (2 * Math.PI) / planet.profile.gear.teeth;
  return {
    towards,
    pitch,
    first: rotationAt(set, planet, slice) - towards,
    half: tipHalfAngle(set, planet, slice),
    radius: tipRadiusAt(set, planet, slice),
  };
}

/**
 * Direction from the planet's axis of the point of a tooth's tip that is nearest to the line of centres once the planet
 * has turned, seen before it has, radians.
 */
function nearestAngle({ towards, pitch, first, half }: TipsAt, tooth: number, turn: number): number {
  const now = first + turn;
  const off = now - (Math.round(now / pitch) - tooth) * pitch;
  return towards - turn + Math.sign(off) * Math.max(0, Math.abs(off) - half);
}

/**
 * @param up 1 at the lower end, whose lip the planet rises from, −1 at the upper one
 * @param tooth counted from the one nearest to the line of centres
 */
function lipContact(
  set: LooseSet,
  planet: LooseGear,
  mate: LooseGear,
  height: number,
  up: 1 | -1,
  tooth: number,
  endless: boolean,
): Contact {
  const place: LipPlace = {
    set,
    planet,
    mate,
    height,
    up,
    tooth,
    endless,
    outside: mate.profile.gear.internal ? -1 : 1,
    tips: tipsAt(set, planet, mate, sliceAt(set, height, up)),
    atFace: faceRadiusOf(mate),
    bevel: planet.bevelSize * Math.tan(set.bevelAngle),
    toMateX: mate.centre[0] - planet.centre[0],
    toMateY: mate.centre[1] - planet.centre[1],
  };
  const z = up === 1 ? height : set.faceWidth - height;
  return { between: [planet.name, mate.name], feature: 'lips', z, smooth: true, place, read: readLip };
}

/** The end of a tooth and the lip it may meet. A is the planet, B its mate. */
interface LipPlace {
  set: LooseSet;
  planet: LooseGear;
  mate: LooseGear;
  /** Height of the place above the end face, mm. */
  height: number;
  up: 1 | -1;
  tooth: number;
  endless: boolean;
  /** 1 outside a sun's cone, −1 inside a ring's. */
  outside: 1 | -1;
  /** The planet's tips at that height. */
  tips: TipsAt;
  /** Radius of the cone at the end face, mm. */
  atFace: number;
  /** Height of the bevel, mm. */
  bevel: number;
  /** From the planet's axis to its mate's, mm. */
  toMateX: number;
  toMateY: number;
}

function readLip(
  place: LipPlace,
  motions: Float64Array,
  a: number,
  b: number,
  slopes?: Float64Array,
): number {
  const { set, planet, mate, height, up, tooth, outside, bevel, toMateX, toMateY } = place;
  const turn = motions[a + 5];
  let { tips } = place;
  let angle = nearestAngle(tips, tooth, turn);
  let x = tips.radius * Math.cos(angle);
  let y = tips.radius * Math.sin(angle);
  const sunk = up * (movedZ(motions, a, x, y) - movedZ(motions, b, x - toMateX, y - toMateY));
  // What has sunk below the end face lies beside the lip no more: its edge then meets the tooth higher up.
  const met = !place.endless && height + sunk < 0 ? Math.min(set.faceWidth / 2, -sunk) : height;
  if (met !== height) {
    tips = tipsAt(set, planet, mate, sliceAt(set, met, up));
    angle = nearestAngle(tips, tooth, turn);
    x = tips.radius * Math.cos(angle);
    y = tips.radius * Math.sin(angle);
  }
  const z = up * (met - set.faceWidth / 2);
  // The same place from the mate's axis.
  const xB = x - toMateX;
  const yB = y - toMateY;
  const px =
    xB +
    movedX(motions, a, y, z) -
    movedX(motions, b, yB, z) +
    bent(motions, a, x, y, z, 1, 0, 0) -
    bent(motions, b, xB, yB, z, 1, 0, 0);
  const py =
    yB +
    movedY(motions, a, x, z) -
    movedY(motions, b, xB, z) +
    bent(motions, a, x, y, z, 0, 1, 0) -
    bent(motions, b, xB, yB, z, 0, 1, 0);
  const radius = Math.sqrt(px * px + py * py);
  // Outside a sun's cone, which narrows away from the end face; inside a ring's, which widens. Above the bevel the
  // tips are a cylinder.
  const sine = met > bevel ? 1 : Math.sin(set.bevelAngle);
  const cosine = met > bevel ? 0 : Math.cos(set.bevelAngle);
  if (slopes) {
    const outward = (outside * sine) / radius;
    writeSlopes(slopes, 0, outward * px, outward * py, up * cosine, x, y, z);
    writeSlopes(slopes, 6, -outward * px, -outward * py, -up * cosine, xB, yB, z);
  }
  const rise =
    up *
    (movedZ(motions, a, x, y) -
      movedZ(motions, b, xB, yB) +
      bent(motions, a, x, y, z, 0, 0, 1) -
      bent(motions, b, xB, yB, z, 0, 0, 1));
  return outside * (radius - place.atFace) * sine + (met + rise) * cosine;
}

/** Whether a motion takes a planet's bevels past the lips of its mate altogether, where their cones end. */
export function passesLips(
  set: LooseSet,
  planet: LooseGear,
  mate: LooseGear,
  motions: Readonly<Record<string, Motion>>,
): boolean {
  if (!mate.lips) return false;
  const rise = (gear: LooseGear) => motions[gear.name]?.[2] ?? 0;
  return Math.abs(rise(planet) - rise(mate)) > planet.bevelSize * Math.tan(set.bevelAngle);
}
