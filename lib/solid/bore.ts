import type { Bore } from '../spec/types.js';
import { polar } from '../tooth/polar.js';
import { chordsOf, circlePoints, type Point, polygonPoints } from './stack/contour.js';

/**
 * Outline of a bore about the axis, counter-clockwise, x and y of corner i at [i]; empty for no bore. mm.
 * @param tolerance largest distance of a chord from a round wall, mm
 */
export function boreOutline(bore: Bore, tolerance: number): Point[] {
  switch (bore.shape) {
    case 'none':
      return [];
    case 'round':
      return circlePoints(bore.diameter / 2, tolerance);
    case 'hexagon':
      return polygonPoints(6, bore.acrossFlats);
    case 'square':
      return polygonPoints(4, bore.acrossFlats);
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

/** The flat faces +x at distance `flat` from the axis. */
function dShape(radius: number, flat: number, tolerance: number): Point[] {
  const from = Math.acos(flat / radius);
  const span = 2 * (Math.PI - from);
  const count = Math.ceil((chordsOf(radius, tolerance) * span) / (2 * Math.PI));
  return Array.from({ length: count + 1 }, (_, i) => polar(radius, from + (span * i) / count));
}
