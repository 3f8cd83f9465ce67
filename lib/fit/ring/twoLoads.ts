import type { RingSection } from './section.js';
import { wallStress } from './stress.js';

/** A ring squeezed between two opposite forces. Lengths in mm, moments in N mm, stress in MPa. */
export interface SqueezedRing {
  /** How much shorter the diameter under the forces becomes. */
  loadedDiameter: number;
  /** How much longer the diameter square to it becomes. */
  otherDiameter: number;
  /** Moment in the wall under each force; it pulls on the inside. */
  momentUnderLoad: number;
  /** Moment midway between the forces; it pulls on the outside. */
  momentMidway: number;
  /** Largest stress anywhere in the wall. */
  stress: number;
}

/**
 * A free ring under two opposite forces that squeeze it.
 * @param force each of the two, N
 * Source: Roark, circular rings, case 1 with k1 and k2 for thick walls; thin walls give Timoshenko's
 * (π/4 − 2/π) and (2/π − 1/2) W R³/(E I), W R/π and W R (1/2 − 1/π) (from memory, recomputed).
 */
export function squeezedRing(section: RingSection, force: number): SqueezedRing {
  const { k1, k2, compliance, meanRadius } = section;
  const momentUnderLoad = (force * meanRadius * k2) / Math.PI;
  const momentMidway = force * meanRadius * (1 / 2 - k2 / Math.PI);
  return {
    loadedDiameter: force * compliance * ((Math.PI * k1) / 4 - (2 * k2 ** 2) / Math.PI),
    otherDiameter: force * compliance * (k1 / 2 - k2 + (2 * k2 ** 2) / Math.PI),
    momentUnderLoad,
    momentMidway,
    stress: Math.max(wallStress(section, momentUnderLoad, 0), wallStress(section, -momentMidway, -force / 2)),
  };
}
