import type { SurfaceDistance } from './exactSurface.js';
import { addPatch, idsOf, type PitchDraft, placeOf } from './pitchVertices.js';
import { type RimVertex, zipPatch } from './zip.js';

/**
 * The cone at one end between two edges that run from the end face to a land: the bevel between the cut edges of a tooth's
 * two flanks, or the lip between the walls of a tooth space. Rows at equal radius, neighbouring rows zipped together
 * along the cone's straight generators, which keep their polar angle.
 * @param leftEdge,rightEdge ids from the end face to the land's columns
 * @param arc ids strictly inside the edge where cone and land meet
 * @returns ids strictly inside the edge that lies in the end face, in the order of angle
 */
export function conePatch(
  draft: PitchDraft,
  surface: SurfaceDistance,
  leftEdge: readonly number[],
  rightEdge: readonly number[],
  arc: readonly number[],
  top: boolean,
): number[] {
  if (leftEdge.length === 1) return [...arc];
  const rows = leftEdge.map((leftId, row) =>
    coneRow(draft, leftId, rightEdge[row], row === leftEdge.length - 1 ? arc : null),
  );
  addPatch(draft, 'land', surface, (emit) => {
    for (let row = 0; row + 1 < rows.length; row++) {
      const [low, high] = top ? [rows[row + 1], rows[row]] : [rows[row], rows[row + 1]];
      zipPatch([...low, ...high.toReversed()], emit);
    }
  });
  return idsOf(rows[0]).slice(1, -1);
}

/** The arc between two vertices at equal height and radius, on the vertices given or on new ones. */
function coneRow(
  draft: PitchDraft,
  leftId: number,
  rightId: number,
  inside: readonly number[] | null,
): RimVertex[] {
  const [lx, ly, z] = placeOf(draft, leftId);
  const [rx, ry] = placeOf(draft, rightId);
  const radius = Math.hypot(lx, ly);
  const from = Math.atan2(ly, lx);
  const span = Math.atan2(lx * ry - ly * rx, lx * rx + ly * ry);
  const count = inside ? inside.length + 1 : Math.max(1, Math.ceil(span / draft.steps.arc(radius) - 1e-9));
  const between = Array.from({ length: count - 1 }, (_, i) => {
    const angle = from + (span * (i + 1)) / count;
    const id = inside
      ? inside[i]
      : draft.positions.push(radius * Math.cos(angle), radius * Math.sin(angle), z) / 3 - 1;
    return { id, ruling: angle };
  });
  return [{ id: leftId, ruling: from }, ...between, { id: rightId, ruling: from + span }];
}
