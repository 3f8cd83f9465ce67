import { betweenPhases } from './betweenPhases.js';
import { type Going, leastAround } from './leastAround.js';
import { nearnesses } from './nearnesses.js';
import type { Strand } from './outlineDistance.js';
import { BETWEEN_SHARE } from './rollingError.js';

/** Two outlines in mesh, at any phase. */
export interface RollingMesh {
  first: Going;
  mate: Going;
  /**
   * What of the first outline, and of its mate, may come within a distance of the other at a phase.
   * @param phase share of the pitch @param margins of the first and of its mate, mm
   */
  strands(phase: number, margins: readonly [number, number]): [Strand[], Strand[]];
}

/** The least gap of a mesh, mm, and where it is met. */
export interface LeastGap {
  least: number;
  /** On each flank of the first gear (clockwise, counter-clockwise side). */
  bySide: [number, number];
  /** Share of the pitch. */
  phase: number;
}

/**
 * The least gap of a mesh over a whole pitch, between the phases already looked at too.
 * @param phases already looked at, evenly spread
 * @param found at them
 * @param gap as drawn, mm
 */
export function refinedMesh(mesh: RollingMesh, phases: number, found: LeastGap, gap: number): LeastGap {
  const { first, mate } = mesh;
  const bySide: [number, number] = [...found.bySide];
  const refined = betweenPhases(phases, found, BETWEEN_SHARE * gap, (phase, half, bound) => {
    const margins = [bound + speed(first) * half, bound + speed(mate) * half] as const;
    const [one, other] = mesh.strands(phase, margins);
    const [value, clockwise, counter] = nearnesses(one, other, bound);
    bySide[0] = Math.min(bySide[0], clockwise);
    bySide[1] = Math.min(bySide[1], counter);
    const around = value > 0 ? leastAround(one, other, first, mate, half, Math.min(bound, value)) : 0;
    return { value, around };
  });
  return { ...refined, bySide };
}

/** No point of an outline moves faster, mm a pitch. */
function speed({ turn, reach, slide }: Going): number {
  return Math.abs(turn) * reach + Math.abs(slide);
}
