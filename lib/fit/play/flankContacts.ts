import { involute } from '../../tooth/involute.js';
import { pathOfContact } from '../../train/contactRatio.js';
import type { PairSizes } from '../../train/pair.js';
import type { Contact } from './contact.js';
import { type LooseFrame, type LooseGear, rotationAt, type Slice, tipRadiusAt, twistAt } from './looseSet.js';
import { addStretchSlopes, stretch, turnAt, writeSliceSlopes } from './sliceMotion.js';

/**
 * Where the flanks of two gears in mesh would touch in one slice: every point of both lines of action, within the
 * path of contact, at which a pair of flanks stands.
 * @param pair sizes as made, `first` being its gear 1; an internal pair has the ring second
 * @param margin how far from both ends of that path, mm [0]
 */
export function flankContacts(
  set: LooseFrame,
  first: LooseGear,
  second: LooseGear,
  pair: PairSizes,
  slice: Slice,
  margin = 0,
): Contact[] {
  const { start, end } = pathOfContact({
    ...pair,
    tipRadius1: tipRadiusAt(set, first, slice),
    tipRadius2: tipRadiusAt(set, second, slice),
  });
  const contacts: Contact[] = [];
  addSide(contacts, set, first, second, pair, slice, 1, start + margin, end - margin);
  addSide(contacts, set, first, second, pair, slice, -1, start + margin, end - margin);
  return contacts;
}

/** @param start, end of the path of contact, mm from where the line of action touches the first base circle */
function addSide(
  contacts: Contact[],
  set: LooseFrame,
  first: LooseGear,
  second: LooseGear,
  pair: PairSizes,
  slice: Slice,
  side: 1 | -1,
  start: number,
  end: number,
): void {
  const { sizes, gear } = first.profile;
  const toSecond = pair.internal ? opposite(second, first) : opposite(first, second);
  const halfBase = sizes.halfThicknessAngle + involute(sizes.transversePressureAngle);
  // The flank's ruling line lies on the line of action where its angle on the base circle is that of the tangent
  // point: roll = tooth + half base thickness − direction + α, seen in a mirror for the other side.
  const roll = side * (rotationAt(set, first, slice) - toSecond) + halfBase + pair.workingPressureAngle;
  const offset = pair.baseRadius1 * roll;
  const tangent = toSecond - side * pair.workingPressureAngle;
  const cos = Math.cos(tangent);
  const sin = Math.sin(tangent);
  const footX = first.centre[0] + pair.baseRadius1 * cos;
  const footY = first.centre[1] + pair.baseRadius1 * sin;
  const pitch = (2 * Math.PI * pair.baseRadius1) / gear.teeth;
  for (let s = offset + pitch * Math.ceil((start - offset) / pitch); s <= end; s += pitch)
    contacts.push(
      flankContact(set, first, second, pair, slice, side, footX - s * side * sin, footY + s * side * cos),
    );
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
 * Tilt enters by the shift of the axis in the slice, the axial shift at the point and the longer outline (`stretch`).
 * Source: ISO 21771, backlash at a changed centre distance; the rest derived.
 */
function flankContact(
  set: LooseFrame,
  first: LooseGear,
  second: LooseGear,
  pair: PairSizes,
  slice: Slice,
  side: 1 | -1,
  x: number,
  y: number,
): Contact {
  const inward = pair.internal ? -1 : 1;
  const [from, to] = pair.internal ? [second, first] : [first, second];
  const place: FlankPlace = {
    internal: pair.internal,
    gap: set.gap,
    nominal: involute(pair.workingPressureAngle),
    cosine: Math.cos(first.profile.sizes.baseHelixAngle),
    inward,
    bases: pair.baseRadius2 + inward * pair.baseRadius1,
    lineX: to.centre[0] - from.centre[0],
    lineY: to.centre[1] - from.centre[1],
    height: slice.z - set.faceWidth / 2,
    closingA: side * pair.baseRadius1,
    closingB: inward * side * pair.baseRadius2,
    twistA: twistAt(set, first, slice),
    twistB: twistAt(set, second, slice),
    xA: x - first.centre[0],
    yA: y - first.centre[1],
    xB: x - second.centre[0],
    yB: y - second.centre[1],
  };
  const { z } = slice;
  return { between: [first.name, second.name], feature: 'flanks', z, smooth: true, place, read: readFlank };
}

/** A place where two flanks may touch. A is the first gear, B the second. */
interface FlankPlace {
  internal: boolean;
  /** Between the flanks at rest, mm. */
  gap: number;
  /** Involute of the working pressure angle, radians. */
  nominal: number;
  /** Of the base helix angle. */
  cosine: number;
  /** 1 for two gears that turn against each other, −1 in a ring. */
  inward: number;
  /** Sum of the base radii, or their difference in a ring, mm. */
  bases: number;
  /** The line of centres, from gear 1 to gear 2 or from the ring to the planet, mm. */
  lineX: number;
  lineY: number;
  /** Of the slice above mid face, mm. */
  height: number;
  /** Base radii, their signs telling which turn closes the gap, mm. */
  closingA: number;
  closingB: number;
  /** Of the helices in this slice, radians/mm. */
  twistA: number;
  twistB: number;
  /** The place from either axis, mm. */
  xA: number;
  yA: number;
  xB: number;
  yB: number;
}

function readFlank(
  place: FlankPlace,
  motions: Float64Array,
  a: number,
  b: number,
  slopes?: Float64Array,
): number {
  const { lineX, lineY, height, closingA, closingB, cosine, twistA, twistB, xA, yA, xB, yB } = place;
  const outward = place.inward * place.bases;
  const from = place.internal ? b : a;
  const to = place.internal ? a : b;
  const dx = lineX + motions[to] - motions[from] + (motions[to + 4] - motions[from + 4]) * height;
  const dy = lineY + motions[to + 1] - motions[from + 1] - (motions[to + 3] - motions[from + 3]) * height;
  const distance = Math.sqrt(dx * dx + dy * dy);
  const angle = Math.acos(Math.min(1, place.bases / distance));
  const delta = Math.atan2(lineX * dy - lineY * dx, lineX * dx + lineY * dy);
  const turned =
    closingA * (turnAt(motions, a, twistA, xA, yA) - delta) +
    closingB * (turnAt(motions, b, twistB, xB, yB) - delta);
  const radial = (cosine * place.inward * Math.sin(angle)) / distance;
  const tangential = (cosine * (closingA + closingB)) / distance / distance;
  const sign = place.internal ? 1 : -1;
  const slopeX = sign * (radial * dx - tangential * dy);
  const slopeY = sign * (radial * dy + tangential * dx);
  // Leaning parts show longer outlines.
  const longer = stretch(motions, a, xA, yA, slopeX, slopeY) - stretch(motions, b, xB, yB, slopeX, slopeY);
  const gap = place.gap + cosine * (outward * (involute(angle) - place.nominal) - turned) + longer;
  if (!slopes) return gap;
  writeSliceSlopes(slopes, 0, slopeX, slopeY, -cosine * closingA, twistA, height, xA, yA);
  writeSliceSlopes(slopes, 6, -slopeX, -slopeY, -cosine * closingB, twistB, height, xB, yB);
  addStretchSlopes(slopes, 0, motions, a, xA, yA, slopeX, slopeY, 1);
  addStretchSlopes(slopes, 6, motions, b, xB, yB, slopeX, slopeY, -1);
  return gap;
}
