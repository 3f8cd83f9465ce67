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
  zipSides(right, left, emit);
}

/**
 * Zips two sides of a patch together in the order of their rulings.
 * @param right,left from their shared first vertex to their shared last one; the patch lies to the left of `right`
 */
export function zipSides(
  right: readonly RimVertex[],
  left: readonly RimVertex[],
  emit: (a: number, b: number, c: number) => void,
): void {
  const lastRight = right.length - 1;
  const lastLeft = left.length - 1;
  // Both sides leave the shared first vertex at once and reach the shared last one at once: three vertices of one
  // side lie nearly on a line, and a triangle between them could stand on the wrong side of it.
  let i = Math.min(1, lastRight - 1);
  let j = Math.min(1, lastLeft - 1);
  if (i === 1 && j === 1) emit(right[0].id, right[1].id, left[1].id);
  while (i < lastRight - 1 || j < lastLeft - 1) {
    const advanceRight =
      j >= lastLeft - 1 || (i < lastRight - 1 && right[i + 1].ruling <= left[j + 1].ruling);
    if (advanceRight) emit(right[i].id, right[++i].id, left[j].id);
    else emit(right[i].id, left[j + 1].id, left[j++].id);
  }
  emit(right[i].id, right[lastRight].id, left[j].id);
}

/** How far a side may run backwards: rounding of angles, radians. */
const ROUNDING = 1e-9;

/** Whether a side of the rim runs backwards by more than rounding, so that `zipPatch` could not fill it. */
export function doublesBack(rim: readonly RimVertex[]): boolean {
  return sidesOf(rim).some((side) =>
    side.some(({ ruling }, i) => i > 0 && ruling < side[i - 1].ruling - ROUNDING),
  );
}

/** @throws Error as `zipPatch` */
function splitRim(rim: readonly RimVertex[]): [RimVertex[], RimVertex[]] {
  if (doublesBack(rim)) throw new Error('a patch doubles back on its rulings');
  return sidesOf(rim);
}

/** The two sides of the rim from its least to its greatest ruling value: counter-clockwise first. */
function sidesOf(rim: readonly RimVertex[]): [RimVertex[], RimVertex[]] {
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
  return [right, left];
}
