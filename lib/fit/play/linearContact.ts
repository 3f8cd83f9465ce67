/** A gap at rest, mm, and how it changes with each number of both parts' motions. */
export interface LinearPlace {
  gap: number;
  slopes: Float64Array;
}

/** `read` of a contact whose gap is linear in the motions. */
export function readLinear(
  { gap, slopes }: LinearPlace,
  motions: Float64Array,
  first: number,
  second: number,
  into?: Float64Array,
): number {
  let now = gap;
  for (let k = 0; k < 6; k++) now += slopes[k] * motions[first + k] + slopes[6 + k] * motions[second + k];
  into?.set(slopes);
  return now;
}
