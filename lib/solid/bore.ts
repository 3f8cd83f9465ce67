import type { Bore } from '../spec/types.js';
import { polar } from '../tooth/polar.js';

/**
 * Outline of a bore about the axis, counter-clockwise, x and y of corner i at [i]; empty for no bore. mm.
 * @param tolerance largest distance of a chord from a round wall, mm
 */
export function boreOutline(bore: Bore, tolerance: number): [number, number][] {
  switch (bore.shape) {
    case 'none':
      return [];
    case 'round':
      return circle(bore.diameter / 2, tolerance);
    case 'hexagon':
      return polygon(6, bore.acrossFlats);
    case 'square':
      return polygon(4, bore.acrossFlats);
    case 'D':
      return dShape(bore.diameter / 2, bore.acrossFlat - bore.diameter / 2, tolerance);
  }
}

/** Radius of the circle that holds the whole bore, mm; 0 for none. */
export function boreRadius(bore: Bore): number {
  switch (bore.shape) {
    case 'none':
      return 0;
    case 'round':
    case 'D':
      return bore.diameter / 2;
    case 'hexagon':
      return bore.acrossFlats / 2 / Math.cos(Math.PI / 6);
    case 'square':
      return bore.acrossFlats / 2 / Math.cos(Math.PI / 4);
  }
}

/** Corners of a circle about the origin whose chords stay within `tolerance` of it. */
export function circle(radius: number, tolerance: number): [number, number][] {
  const count = segmentsOfCircle(radius, tolerance);
  return Array.from({ length: count }, (_, i) => polar(radius, (2 * Math.PI * i) / count));
}

/** Least number of chords, a multiple of four and at least 12, that stay within `tolerance` of a circle. */
function segmentsOfCircle(radius: number, tolerance: number): number {
  const half = Math.acos(Math.max(0, 1 - tolerance / radius));
  return Math.max(12, 4 * Math.ceil(Math.PI / half / 4));
}

function polygon(sides: number, acrossFlats: number): [number, number][] {
  const radius = acrossFlats / 2 / Math.cos(Math.PI / sides);
  return Array.from({ length: sides }, (_, i) => polar(radius, (2 * Math.PI * (i + 0.5)) / sides));
}

/** The flat faces +x at distance `flat` from the axis. */
function dShape(radius: number, flat: number, tolerance: number): [number, number][] {
  const from = Math.acos(flat / radius);
  const span = 2 * (Math.PI - from);
  const count = Math.ceil((segmentsOfCircle(radius, tolerance) * span) / (2 * Math.PI));
  return Array.from({ length: count + 1 }, (_, i) => polar(radius, from + (span * i) / count));
}
