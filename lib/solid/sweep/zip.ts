/** A vertex on the rim of a patch, with its ruling value: what stays constant along a straight generator. */
export interface RimVertex {
  id: number;
  ruling: number;
}

/**
 * Fills a patch of a developable surface with triangles that lie along its straight generators, using only the
 * vertices on its rim: the rim is split at its least and greatest ruling value and the two sides are zipped
 * together in the order of that value. Division is therefore needed across the generators only.
 * @param rim the rim, counter-clockwise seen from outside; ruling values rise from the least to the greatest on
 *   both sides
 * @param emit takes the vertex ids of each triangle, counter-clockwise
 * @throws Error when a side runs backwards by more than rounding: such a patch must be divided first
 */
export function zipPatch(rim: readonly RimVertex[], emit: (a: number, b: number, c: number) => void): void {
  const [right, left] = splitRim(rim);
  let i = 0;
  let j = 0;
  while (i < right.length - 1 || j < left.length - 1) {
    const rightNext = i < right.length - 1 ? right[i + 1].ruling : Number.POSITIVE_INFINITY;
    const leftNext = j < left.length - 1 ? left[j + 1].ruling : Number.POSITIVE_INFINITY;
    // The last step of either side meets at the shared end vertex: never make a triangle with it twice.
    const advanceRight =
      j === left.length - 1 ||
      (i < right.length - 1 && (rightNext < leftNext || (rightNext === leftNext && i <= j)));
    if (advanceRight) {
      if (right[i + 1].id !== left[j].id && right[i].id !== left[j].id)
        emit(right[i].id, right[i + 1].id, left[j].id);
      i++;
    } else {
      if (left[j + 1].id !== right[i].id && right[i].id !== left[j].id)
        emit(right[i].id, left[j + 1].id, left[j].id);
      j++;
    }
  }
}

/** How far a side may run backwards: rounding of angles, radians. */
const ROUNDING = 1e-9;

/** The two sides of the rim from its least to its greatest ruling value: counter-clockwise first. */
function splitRim(rim: readonly RimVertex[]): [RimVertex[], RimVertex[]] {
  const n = rim.length;
  let low = 0;
  let high = 0;
  for (let i = 1; i < n; i++) {
    if (rim[i].ruling < rim[low].ruling) low = i;
    if (rim[i].ruling > rim[high].ruling) high = i;
  }
  const right: RimVertex[] = [];
  for (let i = low; ; i = (i + 1) % n) {
    right.push(rim[i]);
    if (i === high) break;
  }
  const left: RimVertex[] = [];
  for (let i = low; ; i = (i + n - 1) % n) {
    left.push(rim[i]);
    if (i === high) break;
  }
  for (const side of [right, left])
    for (let i = 1; i < side.length; i++)
      if (side[i].ruling < side[i - 1].ruling - ROUNDING)
        throw new Error('a patch doubles back on its rulings');
  return [right, left];
}
