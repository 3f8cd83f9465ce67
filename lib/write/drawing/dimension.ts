import { LETTERING, THIN } from './styles.js';
import { arrow, circle, group, line, num, type PagePoint, text } from './svg.js';

/** Extension lines start this far from the part and end this far past the dimension line, mm. */
const CLEAR = 1;

/**
 * A dimension between two points, its line moved aside by `aside` (to the left when looking from the first
 * point to the second on the page), its words over the middle of the line. mm.
 */
export function dimension(from: PagePoint, to: PagePoint, aside: number, words: string): string {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / run, (to[1] - from[1]) / run];
  const left: PagePoint = [uy, -ux];
  const move = (p: PagePoint, by: number): PagePoint => [p[0] + by * left[0], p[1] + by * left[1]];
  const sign = Math.sign(aside);
  const [a, b] = [move(from, aside), move(to, aside)];
  let turn = (Math.atan2(-uy, ux) * 180) / Math.PI;
  // Words are read from below or from the right, never upside down.
  const upright = turn > -90.001 && turn <= 90;
  if (!upright) turn += turn > 0 ? -180 : 180;
  const over = move([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], upright ? CLEAR : -CLEAR);
  return [
    group(
      THIN,
      line(move(from, sign * CLEAR), move(a, sign * CLEAR)),
      line(move(to, sign * CLEAR), move(b, sign * CLEAR)),
      line(a, b),
      arrow(a, b),
      arrow(b, a),
    ),
    group(LETTERING, text(over, words, { anchor: 'middle', size: 3.5, turn })),
  ].join('\n');
}

/**
 * An angle between two directions from a middle, its line an arc of a radius around it, its words beyond the middle of
 * the arc.
 * @param ends unit directions of the plane (second coordinate up), the second counter-clockwise of the first
 */
export function arcDimension(
  middle: PagePoint,
  radius: number,
  ends: readonly (readonly [number, number])[],
  words: string,
): string {
  const at = ([x, y]: readonly [number, number], r: number): PagePoint => [
    middle[0] + r * x,
    middle[1] - r * y,
  ];
  const [from, to] = ends;
  const turn = Math.atan2(from[0] * to[1] - from[1] * to[0], from[0] * to[0] + from[1] * to[1]);
  const half = Math.atan2(from[1], from[0]) + (turn < 0 ? turn + 2 * Math.PI : turn) / 2;
  const out: readonly [number, number] = [Math.cos(half), Math.sin(half)];
  const [a, b] = [at(from, radius), at(to, radius)];
  // Where the arc is too short for arrows inside, they point at it from outside.
  const roomy = Math.abs(half - Math.atan2(from[1], from[0])) * 2 * radius > 9;
  const side = ([x, y]: readonly [number, number], sign: number): PagePoint => [-sign * y, sign * x];
  const tail = (end: readonly [number, number], sign: number): PagePoint => {
    const [p, [tx, ty]] = [at(end, radius), side(end, sign)];
    return [p[0] + 5 * tx, p[1] - 5 * ty];
  };
  const inward = roomy ? 1 : -1;
  const beside = wordsAlong(half, radius);
  const anchor = out[0] < -0.35 ? 'end' : out[0] > 0.35 ? 'start' : 'middle';
  return [
    group(
      THIN,
      line(at(from, 0.12 * radius), at(from, radius + CLEAR)),
      line(at(to, 0.12 * radius), at(to, radius + CLEAR)),
      `<path d="M${num(a[0])} ${num(a[1])}A${num(radius)} ${num(radius)} 0 ${turn < 0 ? 1 : 0} 0 ${num(b[0])} ${num(b[1])}"/>`,
      ...(roomy ? [] : [line(tail(from, inward), a), line(tail(to, -inward), b)]),
      arrow(a, tail(from, inward)),
      arrow(b, tail(to, -inward)),
    ),
    group(
      LETTERING,
      text([at(beside, radius + 2)[0], at(beside, radius + 2)[1] + (beside[1] < 0 ? 2.5 : 0)], words, {
        anchor,
        size: 3.5,
      }),
    ),
  ].join('\n');
}

/** Where the words of an arc stand: at its middle, but below the letters of a cutting plane at either side. */
function wordsAlong(middle: number, radius: number): readonly [number, number] {
  const low = LETTERS / radius;
  const [x, y] = [Math.cos(middle), Math.sin(middle)];
  return Math.abs(y) < low && low < 1 ? [Math.sign(x) * Math.sqrt(1 - low * low), -low] : [x, y];
}

/** Height below the middle that the letters of a cutting plane take, mm. */
const LETTERS = 6;

/** A part's number in a ring, with a line to a dot on the part. */
export function balloon(part: PagePoint, at: PagePoint, number: string): string {
  const radius = 3.5;
  const run = Math.hypot(part[0] - at[0], part[1] - at[1]);
  const edge: PagePoint = [
    at[0] + ((part[0] - at[0]) * radius) / run,
    at[1] + ((part[1] - at[1]) * radius) / run,
  ];
  return [
    group({ ...THIN, stroke: '#fff', 'stroke-width': 0.9 }, line(edge, part)),
    group({ ...THIN, 'stroke-width': 0.18 }, line(edge, part), circle(at, radius)),
    group({ fill: '#000', stroke: '#fff', 'stroke-width': 0.2 }, circle(part, 0.55)),
    group(LETTERING, text([at[0], at[1] + 1.2], number, { anchor: 'middle', size: 3.5 })),
  ].join('\n');
}
