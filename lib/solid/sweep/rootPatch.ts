import { pointOn, type Segment } from '../../tooth/segments.js';
import { distanceFrom, type ExactSurface, sweptSurface } from './exactSurface.js';
import { addColumn, addPatch, type PitchDraft } from './pitchVertices.js';
import { placeOf } from './places.js';

/**
 * A surface that is not developable, or not well so: a grid of columns between `first` and `last`, each quad split
 * along the diagonal that stays nearer to the exact surface.
 * @param exact the segment that is stood for, where columns stand back from it
 * @returns every column, both ends included, in the order of angle
 */
export function rootPatch(
  draft: PitchDraft,
  segment: Segment,
  first: number[],
  last: number[],
  exact = segment,
): number[][] {
  const surface = sweptSurface(draft.profile, exact);
  const parameters = draft.steps.rootPoints(exact);
  const columns = parameters.map((t, i) =>
    i === 0 ? first : i === parameters.length - 1 ? last : addColumn(draft, pointOn(segment, t)),
  );
  for (let i = 0; i + 1 < columns.length; i++) strip(draft, surface, columns[i], columns[i + 1]);
  return columns;
}

/** The quads between two columns. But for lips they are all alike, and the first decides for all how they are split. */
function strip(
  draft: PitchDraft,
  surface: ExactSurface,
  left: readonly number[],
  right: readonly number[],
): void {
  const rising =
    midpointError(draft, left[0], right[1], surface) <= midpointError(draft, right[0], left[1], surface);
  addPatch(
    draft,
    'root',
    surface,
    (emit) => {
      for (let j = 0; j + 1 < left.length; j++)
        if (rising) {
          emit(left[j], right[j], right[j + 1]);
          emit(left[j], right[j + 1], left[j + 1]);
        } else {
          emit(left[j], right[j], left[j + 1]);
          emit(right[j], right[j + 1], left[j + 1]);
        }
    },
    draft.sweep.lips ? undefined : 2,
  );
}

/** Distance from the exact surface of the middle of the edge between two vertices, mm. */
function midpointError(draft: PitchDraft, a: number, b: number, surface: ExactSurface): number {
  const p = placeOf(draft, a);
  const q = placeOf(draft, b);
  const z = (p[2] + q[2]) / 2;
  const x = (p[0] + q[0]) / 2;
  const y = (p[1] + q[1]) / 2;
  const point = Float64Array.of(Math.hypot(x, y), Math.atan2(y, x) - draft.rate * z, z);
  return distanceFrom(surface, point);
}
