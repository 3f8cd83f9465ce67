/** One change of a gear, or of a bar, against what the file's numbers alone would make. */
export interface Adjustment {
  /** Which part: sun, planet, ring, pinion, wheel, bar or gear. */
  part: string;
  /** The change in one sentence, with the figure made and the one wanted. */
  says: string;
}

/** The sentences of a sheet, each once. */
export function sentences(adjustments: readonly Adjustment[]): string[] {
  return [...new Set(adjustments.map(({ says }) => says))];
}
