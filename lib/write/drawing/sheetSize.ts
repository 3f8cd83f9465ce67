import { refuse } from '../../spec/refusal.js';

/** A sheet of paper standing upright, mm. */
export interface SheetSize {
  name: string;
  width: number;
  height: number;
}

/** ISO 216, A series, upright. */
const SIZES: readonly SheetSize[] = [
  { name: 'A4', width: 210, height: 297 },
  { name: 'A3', width: 297, height: 420 },
  { name: 'A2', width: 420, height: 594 },
  { name: 'A1', width: 594, height: 841 },
  { name: 'A0', width: 841, height: 1189 },
];

/** Edges of the frame: a filing margin on the left (ISO 5457), mm. */
export const MARGIN = { left: 20, right: 10, top: 10, bottom: 10 };

/** The smallest sheet whose frame holds so much at full size; a sheet made to measure beyond A0. mm. */
export function sheetFor(width: number, height: number): SheetSize {
  if (!(width > 0 && height > 0 && Number.isFinite(width + height))) {
    refuse('drawing', [width, height], 'a drawing needs a finite width and height');
  }
  const [wide, high] = [width + MARGIN.left + MARGIN.right, height + MARGIN.top + MARGIN.bottom];
  const fits = SIZES.find((size) => size.width >= wide && size.height >= high);
  return fits ?? { name: 'made to measure', width: Math.ceil(wide), height: Math.ceil(high) };
}
