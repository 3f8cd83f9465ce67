import { involute } from '../../tooth/involute.js';
import { pathOfContact } from '../../train/contactRatio.js';
import type { PairSizes } from '../../train/pair.js';
import type { Contact, ReadGap } from './contact.js';
import { type LooseGear, type LooseSet, rotationAt, type Slice, tipRadiusAt, twistAt } from './looseSet.js';
import { turnAt, writeSliceSlopes } from './sliceMotion.js';

/**
 * Where the flanks of two gears in mesh would touch in one slice: every point of both lines of action, within the
 * path of contact, at which a pair of flanks stands.
 * @param pair sizes as made, `first` being its gear 1; an internal pair has the ring second
 */
export function flankContacts(
  set: LooseSet,
  first: LooseGear,
  second: LooseGear,
  pair: PairSizes,
  slice: Slice,
): Contact[] {
  const { start, end } = pathOfContact({
    ...pair,
    tipRadius1: tipRadiusAt(set, first, slice),
    tipRadius2: tipRadiusAt(set, second, slice),
  });
  const { sizes, gear } = first.profile;
  const toSecond = pair.internal ? opposite(second, first) : opposite(first, second);
  const alpha = pair.workingPressureAngle;
  const tooth = rotationAt(set, first, slice);
  const halfBase = sizes.halfThicknessAngle + involute(sizes.transversePressureAngle);
  const contacts: Contact[] = [];
  for (const side of [1, -1] as const) {
    // The flank's ruling line lies on the line of action where its angle on the base circle is that of the tangent
    // point: roll = tooth + half base thickness − direction + α, seen in a mirror for the other side.
    const roll = side * (tooth - toSecond) + halfBase + alpha;
    const offset = pair.baseRadius1 * roll;
    const tangent = toSecond - side * alpha;
    const foot = [
      first.centre[0] + pair.baseRadius1 * Math.cos(tangent),
      first.centre[1] + pair.baseRadius1 * Math.sin(tangent),
    ];
    const along = [-side * Math.sin(tangent), side * Math.cos(tangent)];
    const pitch = (2 * Math.PI * pair.baseRadius1) / gear.teeth;
    for (let s = offset + pitch * Math.ceil((start - offset) / pitch); s <= end; s += pitch)
      contacts.push(
        flankContact(set, first, second, pair, slice, side, foot[0] + s * along[0], foot[1] + s * along[1]),
      );
  }
  return contacts;
}

/** Direction from one gear's axis to the other's, radians. */
function opposite(from: LooseGear, to: LooseGear): number {
  return Math.atan2(to.centre[1] - from.centre[1], to.centre[0] - from.centre[0]);
}

/**
 * The gap of one pair of flanks for any small motion of both gears. In its slice a gear is shifted and turned; turning
 * counts what an axial shift w adds, since a helix that has moved up by w shows the outline of z − w. Two involutes
 * stay conjugate at any centre distance a, which is what makes the gap exact in the plane:
 * g_t = gap / cos β_b ± (r_b1 ± r_b2)(inv α' − inv α) ∓ [r_b1 (φ1 − δ) ± r_b2 (φ2 − δ)], with cos α' =
 * (r_b1 ± r_b2)/a' and δ the turn of the line of centres; along the flank's normal it is g_t cos β_b.
 * Tilt enters by the shift of the axis in the slice and the axial shift at the point; its cosine is left out.
 * Source: ISO 21771, backlash at a changed centre distance; the rest derived.
 */
function flankContact(
  set: LooseSet,
  first: LooseGear,
  second: LooseGear,
  pair: PairSizes,
  slice: Slice,
  side: 1 | -1,
  x: number,
  y: number,
): Contact {
  const cosine = Math.cos(first.profile.sizes.baseHelixAngle);
  const inward = pair.internal ? -1 : 1;
  const bases = pair.baseRadius2 + inward * pair.baseRadius1;
  // From gear 1 to gear 2, or from the ring to the planet.
  const ends = pair.internal ? ([second, first] as const) : ([first, second] as const);
  const lineX = ends[1].centre[0] - ends[0].centre[0];
  const lineY = ends[1].centre[1] - ends[0].centre[1];
  const nominal = involute(pair.workingPressureAngle);
  const height = slice.z - set.faceWidth / 2;
  const twistA = twistAt(set, first, slice);
  const twistB = twistAt(set, second, slice);
  const closingA = side * pair.baseRadius1;
  const closingB = inward * side * pair.baseRadius2;
  // The place from either axis.
  const [xA, yA] = [x - first.centre[0], y - first.centre[1]];
  const [xB, yB] = [x - second.centre[0], y - second.centre[1]];

  const read: ReadGap = (motions, a, b, slopes) => {
    const from = pair.internal ? b : a;
    const to = pair.internal ? a : b;
    const dx = lineX + motions[to] - motions[from] + (motions[to + 4] - motions[from + 4]) * height;
    const dy = lineY + motions[to + 1] - motions[from + 1] - (motions[to + 3] - motions[from + 3]) * height;
    const distance = Math.sqrt(dx * dx + dy * dy);
    const angle = Math.acos(Math.min(1, bases / distance));
    const delta = Math.atan2(lineX * dy - lineY * dx, lineX * dx + lineY * dy);
    const turned =
      closingA * (turnAt(motions, a, twistA, xA, yA) - delta) +
      closingB * (turnAt(motions, b, twistB, xB, yB) - delta);
    const gap = set.gap + cosine * (inward * bases * (involute(angle) - nominal) - turned);
    if (!slopes) return gap;
    const radial = (cosine * inward * Math.sin(angle)) / distance;
    const tangential = (cosine * (closingA + closingB)) / distance / distance;
    const sign = pair.internal ? 1 : -1;
    const slopeX = sign * (radial * dx - tangential * dy);
    const slopeY = sign * (radial * dy + tangential * dx);
    writeSliceSlopes(slopes, 0, slopeX, slopeY, -cosine * closingA, twistA, height, xA, yA);
    writeSliceSlopes(slopes, 6, -slopeX, -slopeY, -cosine * closingB, twistB, height, xB, yB);
    return gap;
  };
  return { between: [first.name, second.name], feature: 'flanks', z: slice.z, smooth: true, read };
}
