/** Square of the least distance between box `i` of `a` and box `j` of `b`, six numbers a box, mm²; 0 when they meet. */
export function boxGapSquared(a: Float64Array, i: number, b: Float64Array, j: number): number {
  const p = 6 * i;
  const q = 6 * j;
  const x = Math.max(a[p] - b[q + 3], b[q] - a[p + 3], 0);
  const y = Math.max(a[p + 1] - b[q + 4], b[q + 1] - a[p + 4], 0);
  const z = Math.max(a[p + 2] - b[q + 5], b[q + 2] - a[p + 5], 0);
  return x * x + y * y + z * z;
}

/** Sum of the three sides of box `i`, mm: how large it is when deciding which of two nodes to open. */
export function boxGirth(boxes: Float64Array, i: number): number {
  const at = 6 * i;
  return boxes[at + 3] - boxes[at] + (boxes[at + 4] - boxes[at + 1]) + (boxes[at + 5] - boxes[at + 2]);
}
