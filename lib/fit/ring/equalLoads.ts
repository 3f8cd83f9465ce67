import { refuse } from '../../refusal.js';
import type { RingSection } from './section.js';
import { wallStress } from './stress.js';

/** A ring pushed outward at equal angles. Lengths in mm, moments in N mm, stress in MPa. */
export interface SpreadRing {
  /** How far the wall moves out under each force. */
  outwardUnderLoad: number;
  /** How far it moves in midway between two forces. */
  inwardMidway: number;
  /** Moment in the wall under each force; it pulls on the outside. */
  momentUnderLoad: number;
  /** Moment midway between two forces; it pulls on the inside. */
  momentMidway: number;
  /** Largest stress anywhere in the wall. */
  stress: number;
}

/**
 * A free ring under equal outward forces at equal angles.
 * @param count how many, 2 or more
 * @param force each of them, N
 * @throws Refusal when `count` is not a whole number from 2 up
 * Source: Roark, circular rings, case 7 with k1 and k2 for thick walls (from memory, recomputed): thin walls give
 * (W R³/2EI)[(θ + sin θ cos θ)/(2 sin² θ) − 1/θ] under a force, with θ = π/count.
 */
export function spreadRing(section: RingSection, count: number, force: number): SpreadRing {
  if (!(Number.isInteger(count) && count >= 2))
    refuse('out-of-range', 'planets.count', count, 'two forces or more keep a ring in balance', [2]);
  const { k1, k2, compliance, meanRadius } = section;
  const half = Math.PI / count;
  const sin = Math.sin(half);
  const cos = Math.cos(half);
  const momentUnderLoad = ((force * meanRadius) / 2) * (k2 / half - cos / sin);
  const momentMidway = ((force * meanRadius) / 2) * (1 / sin - k2 / half);
  const outward = (k1 * (half - sin * cos)) / (2 * sin ** 2) + (k2 * cos) / sin - k2 ** 2 / half;
  const inward = (k1 * (sin - half * cos)) / (2 * sin ** 2) - k2 / sin + k2 ** 2 / half;
  return {
    outwardUnderLoad: ((force * compliance) / 2) * outward,
    inwardMidway: ((force * compliance) / 2) * inward,
    momentUnderLoad,
    momentMidway,
    stress: Math.max(
      wallStress(section, -momentUnderLoad, (force * cos) / (2 * sin)),
      wallStress(section, momentMidway, force / (2 * sin)),
    ),
  };
}
