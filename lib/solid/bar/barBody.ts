import type { PlacedBar } from '../../fit/train/fitTrain.js';
import { roundPoints } from '../../tooth/bar.js';
import type { Mesh } from '../mesh.js';
import { type BarDraft, barDraft, type Column } from './barDraft.js';
import type { BarSweep } from './barSweep.js';

/** However coarse the tolerance, chords stay this share of the module from the rounding. */
const COARSEST = 0.04;

/**
 * A bar as a closed body in the place where it is printed: end faces of its teeth at z = 0 and the face width, teeth
 * towards +y, square ends at ±x. Slanting a tooth carries every line of it along a straight line, so flanks, lands and
 * bevels are plane and exact; only root roundings are divided.
 * @param tolerance largest distance of the mesh from the exact surface, mm
 */
export function barBody(bar: PlacedBar, sweep: BarSweep, tolerance: number): Mesh {
  const { profile, datum, ends, backing } = bar;
  const draft = barDraft(bar, sweep);
  const root = datum + profile.root;
  const start = draft.standing(ends[0], root - backing);
  let last = draft.strip(start, draft.standing(ends[1], root - backing));
  last = draft.strip(last, draft.standing(ends[1], root));
  last = teethAlong(draft, bar, last, tolerance);
  draft.strip(draft.strip(last, draft.standing(ends[0], root)), start);
  return draft.mesh();
}

/** Draws the teeth one by one towards −x, from the line `last` on the root land; returns the line where they end. */
export function teethAlong(draft: BarDraft, bar: PlacedBar, last: Column, tolerance: number): Column {
  const { profile, teeth, firstTooth, datum } = bar;
  const round = roundPoints(profile, Math.min(tolerance, COARSEST * profile.bar.module));
  let line = last;
  for (let tooth = teeth - 1; tooth >= 0; tooth--) {
    const middle = firstTooth + tooth * profile.transversePitch;
    const side = (sign: 1 | -1) => round.map(([u, v]) => draft.leaning(middle + sign * u, datum + v));
    const [right, left] = [side(1), side(-1).toReversed()];
    for (const column of right) line = draft.strip(line, column);
    draft.tooth(middle, line, left[0]);
    line = left[0];
    for (const column of left.slice(1)) line = draft.strip(line, column);
  }
  return line;
}
