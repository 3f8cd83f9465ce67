import { pointOn, type Segment } from './segments.js';

/**
 * Parameters along a segment, both ends included, spaced so that no chord leaves the curve by more than `sagitta`
 * with the fewest points: equal steps of ∫ √curvature ds, since a chord's sagitta is curvature × chord² / 8.
 * @param sagitta mm, > 0
 */
export function sampleSegment(segment: Segment, sagitta: number): number[] {
  const step = Math.sqrt(8 * sagitta);
  switch (segment.kind) {
    case 'arc':
    case 'round':
      return evenly(segment, Math.sqrt(segment.radius) * Math.abs(segment.to - segment.from), step);
    case 'involute': {
      // Radius of curvature r_b ψ, arc length r_b ψ²/2, so ∫ √curvature ds = ⅔ √r_b ψ^{3/2}.
      const measure = (roll: number) => (2 / 3) * Math.sqrt(segment.baseRadius) * roll ** 1.5;
      const first = measure(segment.from);
      const last = measure(segment.to);
      const count = Math.max(1, Math.ceil(Math.abs(last - first) / step - 1e-9));
      return ends(segment, count, (share) => {
        const at = first + (last - first) * share;
        return (at / measure(1)) ** (2 / 3);
      });
    }
    case 'trochoid':
      return numerically(segment, step);
  }
}

function evenly(segment: Segment, total: number, step: number): number[] {
  const count = Math.max(1, Math.ceil(total / step - 1e-9));
  return ends(segment, count, (share) => segment.from + (segment.to - segment.from) * share);
}

/** `count` steps whose first and last parameters are exactly the segment's own. */
function ends(segment: Segment, count: number, at: (share: number) => number): number[] {
  const values = [segment.from];
  for (let i = 1; i < count; i++) values.push(at(i / count));
  values.push(segment.to);
  return values;
}

/** Steps in which the turning of a curve is added up. */
const FINE = 200;

/** A curve is divided again and again, more or less finely, so its measure is kept as long as the curve is. */
const known = new WeakMap<Segment, Float64Array>();

/** ∫ √curvature ds up to each of the fine steps of any smooth curve: the turning of short chords stands in for curvature. */
function fineMeasure(segment: Segment): Float64Array {
  const found = known.get(segment);
  if (found) return found;
  const points = new Float64Array(2 * (FINE + 1));
  for (let i = 0; i <= FINE; i++)
    points.set(pointOn(segment, segment.from + ((segment.to - segment.from) * i) / FINE), 2 * i);
  const measure = new Float64Array(FINE + 1);
  for (let i = 1, before = turningAt(points, 0); i <= FINE; i++) {
    const length = Math.hypot(points[2 * i] - points[2 * i - 2], points[2 * i + 1] - points[2 * i - 1]);
    const turning = turningAt(points, i);
    measure[i] = measure[i - 1] + Math.sqrt(Math.max(before, turning) * length);
    before = turning;
  }
  known.set(segment, measure);
  return measure;
}

function numerically(segment: Segment, step: number): number[] {
  const measure = fineMeasure(segment);
  const total = measure[FINE];
  const count = Math.max(1, Math.ceil(total / step - 1e-9));
  let i = 1;
  return ends(segment, count, (share) => {
    const wanted = total * share;
    while (measure[i] < wanted) i++;
    const within = (wanted - measure[i - 1]) / (measure[i] - measure[i - 1]);
    return segment.from + ((segment.to - segment.from) * (i - 1 + within)) / FINE;
  });
}

/** Angle between the chords before and after point i, scaled to one chord's length; ends take their neighbour's. */
function turningAt(points: Float64Array, i: number): number {
  const at = 2 * Math.min(Math.max(i, 1), FINE - 1);
  const ux = points[at] - points[at - 2];
  const uy = points[at + 1] - points[at - 1];
  const vx = points[at + 2] - points[at];
  const vy = points[at + 3] - points[at + 1];
  return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
}
