import type { Pin } from '../../spec/types.js';

/** Radius at a height above the lower end face of the gears, mm. */
export type Station = readonly [z: number, radius: number];

/** Least depth of a bore's cones, mm, and the share of half the face that they may take. */
const LEAST_CONE = 0.01;
const MOST_CONE = 0.98;

/**
 * A pin and the bore around it, both bodies of revolution: their stations from the lower end to the upper one. Cones lean
 * by 45° and meet at mid face; the bore runs along the pin at the gap, measured along the normal.
 * @param from,to ends of the pin, mm; the bore reaches from 0 to the face width
 */
export function pinShape(
  { diameter, form, depth }: Pin,
  gap: number,
  faceWidth: number,
  from: number,
  to: number,
): { pin: Station[]; bore: Station[] } {
  const radius = diameter / 2;
  const middle = faceWidth / 2;
  // Offset by the gap, the corner between a cylinder and a 45° cone moves along the bisector of the two.
  const aside = gap * Math.tan(Math.PI / 8);
  const cones = (shift: number, ends: number, waist: number): Station[] => [
    [middle - shift, ends],
    [middle, waist],
    [middle + shift, ends],
  ];
  // A gap as wide as the cones are deep leaves none of them in the bore; they end before the faces do.
  const narrow = depth - aside;
  const wide = Math.min(depth + aside, MOST_CONE * middle);
  const between = {
    straight: { pin: [], bore: [] },
    waisted: {
      pin: cones(depth, radius, radius - depth),
      bore: narrow > LEAST_CONE ? cones(narrow, radius + gap, radius + gap - narrow) : [],
    },
    barrelled: {
      pin: cones(depth, radius - depth, radius),
      bore: cones(wide, radius - depth + gap, radius - depth + gap + wide),
    },
  }[form];
  const atEnds = form === 'barrelled' ? radius - depth : radius;
  return {
    pin: [[from, atEnds], ...between.pin, [to, atEnds]],
    bore: [[0, atEnds + gap], ...between.bore, [faceWidth, atEnds + gap]],
  };
}

/** Largest radius of the bore, mm. */
export function boreReach({ diameter, form }: Pin, gap: number): number {
  return diameter / 2 + (form === 'barrelled' ? gap * Math.SQRT2 : gap);
}

/** Least radius of the pin, mm. */
export function leastPinRadius({ diameter, depth }: Pin): number {
  return diameter / 2 - depth;
}
