import { figure } from '../figure.js';
import type { Closest } from './closest.js';
import { type CutPart, cutFace } from './cutParts.js';
import { scaleText } from './layout.js';
import { type Placing, toPage } from './placing.js';
import { CHAIN, LETTERING, PLAIN, THIN } from './styles.js';
import type { PlacedGear } from './subject.js';
import { arrow, circle, group, line, num, type PagePoint, text } from './svg.js';

/** Radius of the window on the page, mm. */
export const DETAIL_RADIUS = 21;
/** Width and height that the detail takes, its words beside the window, mm. */
export const DETAIL_SIZE = { width: 80, height: 2 * DETAIL_RADIUS + 4 };

/** Enlargements in use (ISO 5455). */
const SCALES = [100, 50, 20, 10, 5, 2];

/** The largest usual enlargement whose window still shows a whole tooth on either side of the gap. */
export function detailScale(transverseModule: number): number {
  return SCALES.find((scale) => DETAIL_RADIUS / scale >= 1.2 * transverseModule) ?? 1;
}

/** The narrowest mesh enlarged in a round window, with the gap between two flanks marked, its words on the right. */
export function detailView(
  cut: readonly CutPart[],
  gears: readonly PlacedGear[],
  { one, other }: Closest,
  scale: number,
  corner: PagePoint,
  words: readonly string[],
): string {
  const at: PagePoint = [corner[0] + DETAIL_RADIUS + 1, corner[1] + DETAIL_RADIUS + 1];
  const about = [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2] as const;
  const placing: Placing = { at, about, scale };
  const [a, b] = [toPage(one, placing), toPage(other, placing)];
  const run = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [ux, uy] = [(b[0] - a[0]) / run, (b[1] - a[1]) / run];
  const beyond = (from: PagePoint, by: number): PagePoint => [from[0] + by * ux, from[1] + by * uy];
  // Arrows outside the gap, pointing at it: there is no room between the flanks.
  const [low, high] = [beyond(a, -9), beyond(b, 9)];
  const side = at[0] + DETAIL_RADIUS + 3;
  return [
    `<clipPath id="detail-window"><circle cx="${num(at[0])}" cy="${num(at[1])}" r="${DETAIL_RADIUS}"/></clipPath>`,
    group(
      { 'clip-path': 'url(#detail-window)' },
      ...cut.map((part) => cutFace(part, placing)),
      group(
        CHAIN,
        ...gears.map((gear) => circle(toPage(gear.centre, placing), scale * gear.radii.reference)),
      ),
      group({ ...THIN, stroke: '#fff', 'stroke-width': 1 }, line(low, a), line(b, high)),
      group({ ...THIN, 'stroke-width': 0.25 }, line(low, high), arrow(a, low), arrow(b, high)),
    ),
    group({ ...THIN, 'stroke-width': 0.25 }, circle(at, DETAIL_RADIUS)),
    group(PLAIN, text([side, at[1] - 9], 'C', { size: 4, bold: true })),
    group(PLAIN, text([side + 5, at[1] - 9], scaleText(scale), { size: 3.5 })),
    group(PLAIN, ...words.map((row, i) => text([side, at[1] - 2 + 4.6 * i], row))),
  ].join('\n');
}

/** The ring around the place that the detail shows, and a line from it to its letter right of the view. */
export function detailMark({ one, other }: Closest, scale: number, placing: Placing, right: number): string {
  const [x, y] = toPage([(one[0] + other[0]) / 2, (one[1] + other[1]) / 2], placing);
  const radius = Math.max(1.5, (DETAIL_RADIUS / scale) * (placing.scale ?? 1));
  const letter: PagePoint = [right + 5, toPage([0, 0], placing)[1] + 14];
  const run = Math.hypot(letter[0] - x, letter[1] - y);
  const edge: PagePoint = [x + (radius * (letter[0] - x)) / run, y + (radius * (letter[1] - y)) / run];
  return [
    group({ ...THIN, stroke: '#fff', 'stroke-width': 0.9 }, line(edge, letter)),
    group({ ...THIN, 'stroke-width': 0.25 }, circle([x, y], radius), line(edge, letter)),
    group(LETTERING, text([letter[0] + 1, letter[1] + 1.4], 'C', { size: 4, bold: true })),
  ].join('\n');
}

/** What the detail says of a gap, mm: the gap itself, and the same across the section where that is more. */
export function gapWords(gap: number, gapAcross: number): string[] {
  const words = [`gap ${figure(gap)}`, 'normal to the flanks'];
  return gapAcross > gap + 5e-4 ? [...words, `(${figure(gapAcross)} in this section)`] : words;
}
