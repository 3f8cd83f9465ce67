import { type Gear, gearSizes } from './gear.js';

/**
 * Depth of the straight flank of the generating rack below its datum line, in units of m_n: the dedendum less
 * the rounding, h_fP* − ρ_fP* (1 − sin α_n). 1.0 for ISO 53 profile A, a little more for B and C.
 */
export function straightDepth(gear: Gear): number {
  const { normalPressureAngle } = gearSizes(gear);
  return gear.rack.dedendum - gear.rack.fillet * (1 - Math.sin(normalPressureAngle));
}

/**
 * Least number of teeth that a rack can generate without undercut at no profile shift; not rounded.
 * @param depth straight depth of the rack in units of m_n [h_a*, as handbooks tabulate it]; pass
 *   `straightDepth(gear)` for the rack as it really is
 * Source: DIN 3960 / handbooks, z_min = 2 h_a* cos β / sin² α_t (from memory).
 */
export function leastTeeth(gear: Gear, depth = gear.rack.addendum): number {
  const { helixAngle, transversePressureAngle } = gearSizes(gear);
  return (2 * depth * Math.cos(helixAngle)) / Math.sin(transversePressureAngle) ** 2;
}

/**
 * Least profile shift coefficient x that keeps a gear of these teeth free of undercut; negative when it has
 * shift to spare.
 * @param depth as for `leastTeeth`
 * Source: DIN 3960 / handbooks, x_min = h_a* − z sin² α_t / (2 cos β) (from memory).
 */
export function leastProfileShift(gear: Gear, depth = gear.rack.addendum): number {
  return depth * (1 - gear.teeth / leastTeeth(gear, depth));
}
