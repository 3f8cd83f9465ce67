import { kindOf } from '../../solid/partKinds.js';
import type { Hatch } from './hatching.js';

/** Line kinds in the manner of ISO 128-2: a wide line for edges, a narrow one for all else. Widths in mm. */
export const EDGE = { fill: 'none', stroke: '#000', 'stroke-width': 0.35, 'stroke-linejoin': 'round' };
/** Hatching: narrower still, so that faces stay light. */
export const HATCH = { fill: 'none', stroke: '#000', 'stroke-width': 0.1 };
export const THIN = { fill: 'none', stroke: '#000', 'stroke-width': 0.13 };
/** Axes and reference circles: long dash, dot. */
export const CHAIN = { ...THIN, 'stroke-dasharray': '5 0.9 0.4 0.9' };
/** Text over hatching keeps a white edge. */
export const LETTERING = {
  fill: '#000',
  stroke: '#fff',
  'stroke-width': 0.6,
  'stroke-linejoin': 'round',
  'paint-order': 'stroke',
  'font-family': 'Helvetica, Arial, Liberation Sans, DejaVu Sans, sans-serif',
};
/** Lettering on clear paper. */
export const PLAIN = { fill: '#000', stroke: 'none', 'font-family': LETTERING['font-family'] };

/** A cutting plane's ends. */
export const CUT = { fill: 'none', stroke: '#000', 'stroke-width': 0.7 };

/**
 * One hatching for each kind of part, so that neighbours differ in direction, or else in spacing (ISO 128-50, from
 * memory): turn in degrees and spacing in mm.
 */
const HATCHES: Record<string, Hatch> = {
  sun: { turn: 45, step: 1.6 },
  pinion: { turn: 45, step: 1.6 },
  gear: { turn: 45, step: 1.6 },
  planet: { turn: -45, step: 2.2 },
  wheel: { turn: -45, step: 2.2 },
  bar: { turn: -45, step: 2.2 },
  ring: { turn: 45, step: 2.8 },
  carrier: { turn: 45, step: 1 },
  'clamp-ring': { turn: -45, step: 1.2 },
};
const OTHER: Hatch = { turn: -45, step: 0.9 };

/** The hatching of a part. */
export function hatchOf(name: string): Hatch {
  return HATCHES[kindOf(name)] ?? OTHER;
}
