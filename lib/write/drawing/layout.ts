import { refuse } from '../../refusal.js';
import type { PagePoint } from './svg.js';

/** ISO 216 A4, upright, mm. */
export const PAPER = { width: 210, height: 297 };
/** Edges of the frame: a filing margin on the left (ISO 5457), mm. */
export const MARGIN = { left: 20, right: 10, top: 10, bottom: 10 };
/** Enlargements, full size and reductions in use (ISO 5455, from memory): page mm for each mm of the part. */
const SCALES = [50, 20, 10, 5, 2, 1].concat([2, 5, 10, 20, 50, 100, 200, 500].map((n) => 1 / n));

/** Room for dimensions, numbers and letters around the two views, mm. */
const BESIDE = 24;
const ABOVE = 17;
const BETWEEN = 22;
const BELOW = 14;

/** What the views have to hold, mm of the part. */
export interface Extent {
  /** Across both views. */
  width: number;
  /** Of the view from above. */
  depth: number;
  /** Of the axial section. */
  height: number;
}

/** Where the two views stand on the page. */
export interface Layout {
  /** Page mm for each mm of the part. */
  scale: number;
  /** Middle of the view from above, and of the axial section. */
  upper: PagePoint;
  lower: PagePoint;
}

/**
 * The largest scale in use at which both views fit on the page over the tables, and where they stand then: the view
 * from above over the axial section, axes in line.
 * @param blocks height of the tables at the foot of the page, mm
 * @throws Refusal when a size is not a number above 0, or is beyond 1 : 500
 */
export function layoutFor({ width, depth, height }: Extent, blocks: number): Layout {
  const wide = PAPER.width - MARGIN.left - MARGIN.right - 2 * BESIDE;
  const high = PAPER.height - MARGIN.top - MARGIN.bottom - blocks - ABOVE - BETWEEN - BELOW;
  const scale = SCALES.find((each) => each * width <= wide && each * (depth + height) <= high);
  const rule = 'a drawing needs sizes above 0 that fit on A4 at 1 : 500';
  if (scale === undefined) refuse('out-of-range', 'drawing', [width, depth, height], rule);
  const spare = high - scale * (depth + height);
  const middle = MARGIN.left + (PAPER.width - MARGIN.left - MARGIN.right) / 2;
  const upper = MARGIN.top + ABOVE + spare / 4 + (scale * depth) / 2;
  const lower = upper + (scale * (depth + height)) / 2 + BETWEEN + spare / 4;
  return { scale, upper: [middle, upper], lower: [middle, lower] };
}

/** A scale in words: `2 : 1`, `1 : 5`. */
export function scaleText(scale: number): string {
  return scale >= 1 ? `${Math.round(scale)} : 1` : `1 : ${Math.round(1 / scale)}`;
}
