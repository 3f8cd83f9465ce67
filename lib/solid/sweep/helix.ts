import type { ToothProfile } from '../../tooth/profile.js';

/** How a transverse tooth outline is carried along the axis. Lengths in mm, angles in radians. */
export interface Sweep {
  form: 'spur' | 'helical' | 'herringbone';
  faceWidth: number;
  hand: 'right' | 'left';
  /** Radial cut-back of the tips at the end faces, and the cone's angle from the end face. */
  bevelSize: number;
  bevelAngle: number;
  /**
   * Cones that close the tooth spaces at the end faces, as steep as the bevels: both begin at the bevels' radius in the end
   * face, so that the end face is bounded by a circle [false].
   */
  lips?: boolean;
}

/** Turn of the outline for one mm along the axis, radians per mm, without sign: tan β / r. */
export function twistRate(profile: ToothProfile, sweep: Sweep): number {
  return sweep.form === 'spur' ? 0 : Math.tan(profile.sizes.helixAngle) / profile.sizes.referenceRadius;
}

/** Axial height of the bevel, mm. */
export function bevelHeight(sweep: Sweep): number {
  return sweep.bevelSize * Math.tan(sweep.bevelAngle);
}

/** Radius at which a gear's bevels, and its lips, begin in the end faces, mm. */
export function faceRadius({ gear, tipRadius }: ToothProfile, { bevelSize }: Sweep): number {
  return gear.internal ? tipRadius + bevelSize : tipRadius - bevelSize;
}

/** Height of a lip's cone above its end face at a radius on the root side of where it begins, mm; 0 for no lips. */
export function lipHeight(profile: ToothProfile, sweep: Sweep, radius: number): number {
  return sweep.lips ? Math.abs(radius - faceRadius(profile, sweep)) * Math.tan(sweep.bevelAngle) : 0;
}

/** Turn of the outline at height z against the one at z = 0, radians, with the sign of the hand. */
export function turnAt(profile: ToothProfile, sweep: Sweep, z: number): number {
  const climb = sweep.form === 'herringbone' ? Math.min(z, sweep.faceWidth - z) : z;
  return (sweep.hand === 'right' ? 1 : -1) * twistRate(profile, sweep) * climb;
}

/** What turns points of the right-handed body back into the pitch of the tooth on +x at z = 0. */
export interface Untwisting {
  /** radians/mm */
  rate: number;
  /** radians */
  pitch: number;
  /** Where the helix turns back, both halves alike, mm: the face width of a herringbone, else never. */
  mirror: number;
}

export function untwisting(profile: ToothProfile, sweep: Sweep): Untwisting {
  const mirror = sweep.form === 'herringbone' ? sweep.faceWidth : Number.POSITIVE_INFINITY;
  return { rate: twistRate(profile, sweep), pitch: (2 * Math.PI) / profile.gear.teeth, mirror };
}

/** Polar angle of a point once it is turned back, radians. */
export function angleBefore({ rate, pitch, mirror }: Untwisting, x: number, y: number, z: number): number {
  const angle = Math.atan2(y, x) - rate * Math.min(z, mirror - z);
  return angle - Math.round(angle / pitch) * pitch;
}
