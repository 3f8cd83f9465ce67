import { distanceFrom, type ExactSurface } from './exactSurface.js';
import { foldedBy } from './folded.js';
import { addPatch, idsOf, type PitchDraft } from './pitchVertices.js';
import { placeOf, readCorners } from './places.js';
import { FEW } from './samples.js';
import { type RimVertex, zipPatch, zipSides } from './zip.js';

/**
 * The cone at one end between two edges that run from the end face to a land: the bevel between the cut edges of a tooth's
 * two flanks, or the lip between the walls of a tooth space. Zipped along its straight generators, which keep their
 * polar angle. Where an edge leans so far that it runs back over generators it has crossed, that can fold or stand off the
 * cone: then rows at equal radius lie between, and neighbouring rows are zipped together.
 * @param leftEdge,rightEdge ids from the end face to the land's columns
 * @param arc ids strictly inside the edge where cone and land meet
 * @returns ids strictly inside the edge that lies in the end face, in the order of angle
 */
export function conePatch(
  draft: PitchDraft,
  surface: ExactSurface,
  leftEdge: readonly number[],
  rightEdge: readonly number[],
  arc: readonly number[],
  top: boolean,
): number[] {
  if (leftEdge.length === 1) return [...arc];
  const face = coneRow(draft, leftEdge[0], rightEdge[0], null);
  const zip = (low: readonly RimVertex[], high: readonly RimVertex[]) => {
    const triangles: number[] = [];
    zipPatch(top ? [...high, ...low.toReversed()] : [...low, ...high.toReversed()], (...ids) =>
      triangles.push(...ids),
    );
    return triangles;
  };
  const last = leftEdge.length - 1;
  const tip = coneRow(draft, leftEdge[last], rightEdge[last], arc);
  const around = [...leftEdge.slice(1, last), ...idsOf(tip), ...rightEdge.slice(1, last).toReversed()];
  let triangles = zippedWhole(draft, face, around, top);
  if (foldedBy(draft, triangles, fromAbove) > 0 || !isNear(draft, triangles, surface)) {
    const rows = [
      face,
      ...leftEdge.slice(1, last).map((id, i) => coneRow(draft, id, rightEdge[i + 1], null)),
      tip,
    ];
    triangles = rows.slice(1).flatMap((row, i) => zip(rows[i], row));
  }
  addPatch(draft, 'land', surface, (emit) => {
    for (let i = 0; i < triangles.length; i += 3) emit(triangles[i], triangles[i + 1], triangles[i + 2]);
  });
  return idsOf(face).slice(1, -1);
}

/**
 * Face edge against all the rest of the rim in one go. Where the rest runs back over generators it has crossed, its
 * vertices wait for it to come on again.
 */
function zippedWhole(
  draft: PitchDraft,
  face: readonly RimVertex[],
  around: readonly number[],
  top: boolean,
): number[] {
  let farthest = face[0].ruling;
  const rest = around.map((id) => {
    farthest = Math.max(farthest, seenFrom(draft, id, face[0]));
    return { id, ruling: farthest };
  });
  const side = [face[0], ...rest, face[face.length - 1]];
  const triangles: number[] = [];
  const [right, left] = top ? [side, face] : [face, side];
  zipSides(right, left, (...ids) => triangles.push(...ids));
  return triangles;
}

/** Whether triangles keep within what the steps along arcs allow them. */
function isNear(draft: PitchDraft, triangles: readonly number[], surface: ExactSurface): boolean {
  const { sweep, steps } = draft;
  const corners = new Float64Array(9);
  const point = new Float64Array(3);
  for (let t = 0; t < triangles.length; t += 3) {
    readCorners(draft, triangles, t, corners);
    for (let i = 0; i < FEW.shares.length; i += 3) {
      const u = FEW.shares[i];
      const v = FEW.shares[i + 1];
      const w = FEW.shares[i + 2];
      const x = u * corners[0] + v * corners[3] + w * corners[6];
      const y = u * corners[1] + v * corners[4] + w * corners[7];
      const z = u * corners[2] + v * corners[5] + w * corners[8];
      point[0] = Math.sqrt(x * x + y * y);
      point[2] = Math.min(z, sweep.faceWidth - z);
      if (distanceFrom(surface, point) > (point[0] * steps.arc(point[0]) ** 2) / 8) return false;
    }
  }
  return true;
}

/** x and y are there already. */
function fromAbove(): void {}

/** Polar angle of a vertex, counted on from that of another. */
function seenFrom(draft: PitchDraft, id: number, { id: from, ruling }: RimVertex): number {
  const [fx, fy] = placeOf(draft, from);
  const [x, y] = placeOf(draft, id);
  return ruling + Math.atan2(fx * y - fy * x, fx * x + fy * y);
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
