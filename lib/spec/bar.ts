import { radians } from '../tooth/gear.js';
import { ROUNDING } from './nearest.js';
import type { CommonSpec } from './types.js';

type BarSizes = Pick<CommonSpec, 'module' | 'helix' | 'faceWidth'>;

/** Transverse pitch p_t = π m_n / cos β of a bar, along it, mm. Source: ISO 53, ISO 21771. */
export function barPitch({ module, helix }: Pick<BarSizes, 'module' | 'helix'>): number {
  return (Math.PI * module) / Math.cos(radians(helix.angle));
}

/** How far slanted teeth lean along the bar between their ends, or a herringbone's between its ends and mid face, mm. */
export function barLean({ helix, faceWidth }: Pick<BarSizes, 'helix' | 'faceWidth'>): number {
  const oneWay = helix.form === 'herringbone' ? faceWidth / 2 : faceWidth;
  return oneWay * Math.tan(radians(helix.angle));
}

/** Least length of a bar with this many whole teeth between square ends, mm. */
export function lengthOf(teeth: number, sizes: BarSizes): number {
  return teeth * barPitch(sizes) + barLean(sizes);
}

/** How many whole teeth stand in a length, 1 at least. */
export function teethIn(length: number, sizes: BarSizes): number {
  return Math.max(1, Math.floor((length - barLean(sizes)) / barPitch(sizes) + ROUNDING));
}
