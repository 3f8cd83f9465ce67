import { LETTERING, THIN } from './styles.js';
import { arrow, circle, group, line, type PagePoint, text } from './svg.js';

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
