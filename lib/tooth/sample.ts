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
      const [first, last] = [measure(segment.from), measure(segment.to)];
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

/** Any smooth curve: the turning of short chords stands in for curvature. */
function numerically(segment: Segment, step: number): number[] {
  const FINE = 200;
  const parameter = (i: number) => segment.from + ((segment.to - segment.from) * i) / FINE;
  const points = Array.from({ length: FINE + 1 }, (_, i) => pointOn(segment, parameter(i)));
  const measure = [0];
  for (let i = 1; i <= FINE; i++) {
    const length = distance(points[i - 1], points[i]);
    const turning = Math.max(turningAt(points, i - 1), turningAt(points, i));
    measure.push(measure[i - 1] + Math.sqrt(turning * length));
  }
  const total = measure[FINE];
  const count = Math.max(1, Math.ceil(total / step - 1e-9));
  let i = 1;
  return ends(segment, count, (share) => {
    const wanted = total * share;
    while (measure[i] < wanted) i++;
    const within = (wanted - measure[i - 1]) / (measure[i] - measure[i - 1]);
    return parameter(i - 1 + within);
  });
}

/** Angle between the chords before and after point i, scaled to one chord's length; ends take their neighbour's. */
function turningAt(points: [number, number][], i: number): number {
  const at = Math.min(Math.max(i, 1), points.length - 2);
  const [a, b, c] = [points[at - 1], points[at], points[at + 1]];
  const cross = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
  const dot = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
  return Math.abs(Math.atan2(cross, dot));
}

function distance(a: [number, number], b: [number, number]): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}
