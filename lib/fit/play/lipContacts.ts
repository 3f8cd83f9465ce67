import type { Contact, Motion, Reading } from './contact.js';
import {
  faceRadiusOf,
  type LooseGear,
  type LooseSet,
  rotationAt,
  type Slice,
  tipRadiusAt,
} from './looseSet.js';
import { moved, opposite, slopesAlong, type Vector } from './pointMotion.js';
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

/**
 * The point of a tooth's tip that is nearest to the line of centres in a slice once the planet has turned, seen before it
 * has: from the planet's axis, mm.
 * @param turn radians
 */
function nearestPoint(
  set: LooseSet,
  planet: LooseGear,
  mate: LooseGear,
  slice: Slice,
  tooth: number,
  turn: number,
): [number, number] {
  const toMate = Math.atan2(mate.centre[1] - planet.centre[1], mate.centre[0] - planet.centre[0]);
  // A planet is nearest to the ring on the side away from the ring's axis.
  const towards = mate.profile.gear.internal ? toMate + Math.PI : toMate;
  const pitch = (2 * Math.PI) / planet.profile.gear.teeth;
  const first = rotationAt(set, planet, slice) + turn - towards;
  const off = first - (Math.round(first / pitch) - tooth) * pitch;
  const half = tipHalfAngle(set, planet, slice);
  const angle = towards - turn + Math.sign(off) * Math.max(0, Math.abs(off) - half);
  const radius = tipRadiusAt(set, planet, slice);
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
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
  const outside = mate.profile.gear.internal ? -1 : 1;
  const atFace = faceRadiusOf(mate);
  const bevel = planet.bevelSize * Math.tan(set.bevelAngle);
  const at = (fromFace: number, turn: number) => {
    const slice = sliceAt(set, fromFace, up);
    const [x, y] = nearestPoint(set, planet, mate, slice, tooth, turn);
    const z = slice.z - set.faceWidth / 2;
    const arm: Vector = [x, y, z];
    const away: Vector = [planet.centre[0] + x - mate.centre[0], planet.centre[1] + y - mate.centre[1], z];
    return { arm, away };
  };
  const read = (a: Motion, b: Motion): Reading => {
    const standing = at(height, a[5]);
    const sunk = riseOf(standing, a, b, up);
    // What has sunk below the end face lies beside the lip no more: its edge then meets the tooth higher up.
    const met = !endless && height + sunk < 0 ? Math.min(set.faceWidth / 2, -sunk) : height;
    const { arm, away } = met === height ? standing : at(met, a[5]);
    const [da, db] = [moved(a, arm), moved(b, away)];
    const px = away[0] + da[0] - db[0];
    const py = away[1] + da[1] - db[1];
    const radius = Math.hypot(px, py);
    const rise = met + up * (da[2] - db[2]);
    // Outside a sun's cone, which narrows away from the end face; inside a ring's, which widens. Above the bevel the
    // tips are a cylinder.
    const [sine, cosine] = met > bevel ? [1, 0] : [Math.sin(set.bevelAngle), Math.cos(set.bevelAngle)];
    const gap = outside * (radius - atFace) * sine + rise * cosine;
    const outward = (outside * sine) / radius;
    const normal: Vector = [outward * px, outward * py, up * cosine];
    return { gap, slopes: [slopesAlong(normal, arm), opposite(slopesAlong(normal, away))] };
  };
  const z = up === 1 ? height : set.faceWidth - height;
  return { between: [planet.name, mate.name], feature: 'lips', z, smooth: true, read };
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

/** How far a place of the planet rises from the end face of its mate, mm. */
function riseOf({ arm, away }: { arm: Vector; away: Vector }, a: Motion, b: Motion, up: 1 | -1): number {
  return up * (moved(a, arm)[2] - moved(b, away)[2]);
}
