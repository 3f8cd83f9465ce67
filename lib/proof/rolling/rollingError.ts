/** Chords of rolled outlines stay this share of the gap from the curves; two of them face each other. */
export const CHORD_SHARE = 0.003;
/** Between the phases looked at there may be less than the least found by no more than this share of the gap. */
export const BETWEEN_SHARE = 0.002;
/** Rounding of doubles in places some hundred mm from the axis, mm. */
const ROUNDING = 1e-9;

/**
 * The least gap that outlines of a drawn gap may show as they roll, mm. The curves themselves are exact, so nothing is
 * given away but what the simulation leaves out: its chords and what lies between its phases.
 */
export function leastRolled(gap: number): number {
  return gap * (1 - 2 * CHORD_SHARE - BETWEEN_SHARE) - ROUNDING;
}
