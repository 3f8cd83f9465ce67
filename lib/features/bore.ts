import * as z from 'zod';
import { type Problem, problemOf } from '../refusal.js';
import { mm } from '../spec/fields.js';
import { floorThousandth, ROUNDING } from '../spec/nearest.js';
import { type Range, ranges } from '../spec/ranges.js';
import { chordsOf, circlePoints, type Point, polygonPoints } from '../stack/contour.js';
import { polar } from '../tooth/polar.js';
import { type Compensated, drawnSizes } from './drawn.js';
import type { Drawn } from './feature.js';
import { WALL_LINES } from './room.js';

/** All that there is to say of one shape of bore; to add one, add its sizes to `shapesOf` and the rest to `shapes`. Lengths in mm. */
interface Shape<T> {
  /** The size that calipers read, and that it is made larger or smaller by; the radius of its outermost corner for 1 mm of it. */
  size: { key: string; reach: number; of(own: T): number };
  drawn: Readonly<Record<keyof T, Drawn>>;
  /** Radius of the circle that holds all of it. */
  radius(own: T): number;
  /** Width of the largest rod that goes through. */
  width(own: T): number;
  outline(own: T, tolerance: number): Point[];
  /** What its sizes ask of each other [nothing]. @param part key of the gear in the file */
  agrees?(own: T, part: string): Problem[];
}

/** Opening for a shaft. `acrossFlat`: from the flat to the far side of the circle, mm. */
export type Bore =
  | { shape: 'none' }
  | { shape: 'round'; diameter: number }
  | { shape: 'hexagon'; acrossFlats: number }
  | { shape: 'square'; acrossFlats: number }
  | { shape: 'D'; diameter: number; acrossFlat: number };

/**
 * Round, with flats, or nothing at all: lengths in mm.
 * @param what has a diameter
 * @param examples of a size, and of one across a flat
 */
export const shapesOf = <T extends z.core.$ZodLooseShape>(
  what: string,
  [least, most]: Range,
  [size, flat]: [number, number],
  more: T,
) => {
  const length = (description: string, example = size, from = least) =>
    mm(from, most, { description, source: 'range by common practice', examples: [example] });
  const flats = { acrossFlats: length('Width across flats'), ...more };
  const acrossFlat = 'From the flat to the far side: half the diameter to 0.98 × the diameter';
  return z.union([
    z.literal('none'),
    z.discriminatedUnion('shape', [
      z.strictObject({ shape: z.literal('none') }),
      z.strictObject({ shape: z.literal('round'), diameter: length(`Diameter of ${what}`), ...more }),
      z.strictObject({ shape: z.literal('hexagon'), ...flats }),
      z.strictObject({ shape: z.literal('square'), ...flats }),
      z.strictObject({
        shape: z.literal('D'),
        diameter: length('Diameter of the round side'),
        acrossFlat: length(acrossFlat, flat, least / 2),
        ...more,
      }),
    ]),
  ]);
};

export const bore = shapesOf('the bore', ranges.bore, [6.6, 6.6], {}).default({ shape: 'none' }).meta({
  description: 'Opening for a shaft; at least two lines of wall stay inside the root circle',
  source: 'common practice',
});

const byDiameter = {
  size: { key: 'diameter', reach: 0.5, of: (own: { diameter: number }) => own.diameter },
  radius: (own: { diameter: number }) => own.diameter / 2,
};

const round = {
  ...byDiameter,
  drawn: { diameter: 'opening' },
  width: (own) => own.diameter,
  outline: (own, tolerance) => circlePoints(own.diameter / 2, tolerance),
} satisfies Shape<{ diameter: number }>;

const polygon = (sides: number, reach: number) =>
  ({
    size: { key: 'acrossFlats', reach, of: (own) => own.acrossFlats },
    drawn: { acrossFlats: 'opening' },
    radius: (own) => own.acrossFlats / 2 / Math.cos(Math.PI / sides),
    width: (own) => own.acrossFlats,
    outline: (own) => polygonPoints(sides, own.acrossFlats),
  }) satisfies Shape<{ acrossFlats: number }>;

const flatted = {
  ...byDiameter,
  drawn: { diameter: 'opening', acrossFlat: 'opening' },
  width: (own) => Math.min(own.diameter, own.acrossFlat),
  outline: ({ diameter, acrossFlat }, tolerance) =>
    dShape(diameter / 2, acrossFlat - diameter / 2, tolerance),
  // The flat lies between the middle and just inside the far side, or it is no D.
  agrees({ diameter, acrossFlat }, part) {
    const [least, most] = [diameter / 2, 0.98 * diameter];
    if (acrossFlat >= least - ROUNDING && acrossFlat <= most + ROUNDING) return [];
    const [low, high] = [Math.ceil(least * 1000) / 1000, floorThousandth(most)];
    const rule = `must be from ${low} to ${high} mm: half the diameter to 0.98 × the diameter`;
    const nearest = [acrossFlat < least ? low : high];
    return [problemOf('beyond-limit', `${part}.bore.acrossFlat`, acrossFlat, rule, nearest)];
  },
} satisfies Shape<{ diameter: number; acrossFlat: number }>;

const shapes: Record<Given['shape'], Shape<object>> = {
  round,
  hexagon: polygon(6, 1 / Math.sqrt(3)),
  square: polygon(4, Math.SQRT1_2),
  D: flatted,
};

type Given = Exclude<Bore, { shape: 'none' }>;

function shapeOf({ shape }: Given): Shape<object> {
  return shapes[shape];
}

/**
 * Whether two lines of wall stay between a bore and the root circle of its gear.
 * @param part key of the gear in the file
 * @param rootRadius as made, mm
 * @param lineWidth mm
 */
export function boreProblems(part: string, bore: Bore, rootRadius: number, lineWidth: number): Problem[] {
  const size = mainSize(bore);
  if (!size || bore.shape === 'none') return [];
  const { key, value, reach } = size;
  const most = floorThousandth(floorThousandth(rootRadius - WALL_LINES * lineWidth) / reach);
  if (most < ranges.bore[0]) {
    const rule = `no bore leaves two lines of wall inside the root circle of this ${part}`;
    return [problemOf('no-room', `${part}.bore`, bore, rule, [{ shape: 'none' }])];
  }
  if (value > most + ROUNDING) {
    const rule = `must be at most ${most} mm: two lines of wall inside the ${part}'s root circle`;
    return [problemOf('no-room', `${part}.bore.${key}`, value, rule, [most])];
  }
  return shapeOf(bore).agrees?.(bore, part) ?? [];
}

/** A bore as drawn: every size of it is a distance between two of its walls. */
export function drawnBore<T extends Bore>(bore: T, by: Compensated): T {
  return bore.shape === 'none' ? bore : drawnSizes(bore, shapeOf(bore).drawn, by);
}

/**
 * Outline of a bore about the axis, counter-clockwise, x and y of corner i at [i]; empty for no bore. mm.
 * @param tolerance largest distance of a chord from a round wall, mm
 */
export function boreOutline(bore: Bore, tolerance: number): Point[] {
  return bore.shape === 'none' ? [] : shapeOf(bore).outline(bore, tolerance);
}

/** Radius of the circle that holds the whole bore, mm; 0 for none. */
export function boreRadius(bore: Bore): number {
  return bore.shape === 'none' ? 0 : shapeOf(bore).radius(bore);
}

/** Diameter of the largest round rod that goes through, mm; 0 for none. */
export function boreWidth(bore: Bore): number {
  return bore.shape === 'none' ? 0 : shapeOf(bore).width(bore);
}

/** Diameter, or width across flats, mm, its key, and the radius of the outermost corner for 1 mm of it; null for none. */
export function mainSize(bore: Bore): { key: string; value: number; reach: number } | null {
  if (bore.shape === 'none') return null;
  const { key, reach, of } = shapeOf(bore).size;
  return { key, value: of(bore), reach };
}

/** The flat faces +x at distance `flat` from the axis. */
function dShape(radius: number, flat: number, tolerance: number): Point[] {
  const from = Math.acos(flat / radius);
  const span = 2 * (Math.PI - from);
  const count = Math.ceil((chordsOf(radius, tolerance) * span) / (2 * Math.PI));
  return Array.from({ length: count + 1 }, (_, i) => polar(radius, from + (span * i) / count));
}
