import { USUAL_GAPS } from '../../lib/fit/coupon/readGaps.js';
import { makeFlags } from './make.js';
import { text } from './text.js';

const { tolerance: _, ...shared } = makeFlags;

/** Flags of `cogweave coupon`; a coupon has a tolerance of its own. */
export const couponFlags = {
  gaps: text(`gaps of the stations, mm: FIRST:LAST:STEP or a list with commas [${USUAL_GAPS}]`),
  log: text('trial log that says which gaps are most worth printing next, in place of --gaps'),
  flow: text('flow that the print time is estimated with, mm³/s [line width × layer × 60 mm/s]'),
  name: text('base name of the files [the file’s, with -coupon]'),
  ...shared,
} as const;
