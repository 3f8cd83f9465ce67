import type { PartOutline } from '../../solid/setOutlines.js';
import { figure } from '../figure.js';
import type { FlankGap } from './lineOfAction.js';
import { type Placing, toPage } from './outlines.js';
import { body } from './sectionView.js';
import { CHAIN, EDGE, LETTERING, PLAIN, THIN } from './styles.js';
import { arrow, circle, group, line, num, type PagePoint, text } from './svg.js';

/** Radius of the window on the page, mm. */
export const DETAIL_RADIUS = 24;

/** Enlargements in use (ISO 5455). */
const SCALES = [50, 20, 10, 5, 2];

/** The largest usual enlargement whose window still shows the whole tooth on either side of the gap. */
export function detailScale(transverseModule: number): number {
  return SCALES.find((scale) => DETAIL_RADIUS / scale >= 1.8 * transverseModule) ?? 1;
}

/** Sun and planet where they mesh, enlarged in a round window, with the gap between two flanks measured. */
export function detailView(
  gears: readonly PartOutline[],
  gap: FlankGap,
  scale: number,
  at: PagePoint,
  words: readonly string[],
): string {
  const placing: Placing = { at, about: gap.pitchPoint, scale };
  const [sun, planet] = [toPage(gap.sun, placing), toPage(gap.planet, placing)];
  const run = Math.hypot(planet[0] - sun[0], planet[1] - sun[1]);
  const [ux, uy] = [(planet[0] - sun[0]) / run, (planet[1] - sun[1]) / run];
  const beyond = (from: PagePoint, by: number): PagePoint => [from[0] + by * ux, from[1] + by * uy];
  // Arrows outside the gap, pointing at it: there is no room between the flanks.
  const [low, high] = [beyond(sun, -9), beyond(planet, 9)];
  const pitchCircles = gears.map((gear) =>
    circle(toPage(gear.centre, placing), scale * gear.radii.reference),
  );
  const labelX = at[0] + DETAIL_RADIUS + 5;
  return [
    `<clipPath id="detail-window"><circle cx="${num(at[0])}" cy="${num(at[1])}" r="${DETAIL_RADIUS}"/></clipPath>`,
    group(
      { 'clip-path': 'url(#detail-window)' },
      group(EDGE, ...gears.map((gear) => body(gear, placing))),
      group(CHAIN, ...pitchCircles),
      group({ ...THIN, stroke: '#fff', 'stroke-width': 0.9 }, line(low, sun), line(planet, high)),
      group({ ...THIN, 'stroke-width': 0.25 }, line(low, high), arrow(sun, low), arrow(planet, high)),
    ),
    group({ ...THIN, 'stroke-width': 0.25 }, circle(at, DETAIL_RADIUS)),
    group(PLAIN, text([labelX, at[1] - 9], `A  ${figure(scale)} : 1`, { size: 4, bold: true })),
    group(LETTERING, ...words.map((row, i) => text([labelX, at[1] - 3 + 4.6 * i], row))),
  ].join('\n');
}

/** The ring around the place that the detail shows, with its letter. */
export function detailMark(gap: FlankGap, scale: number, placing: Placing): string {
  const [x, y] = toPage(gap.pitchPoint, placing);
  const radius = DETAIL_RADIUS / scale;
  return [
    group({ ...THIN, 'stroke-width': 0.25 }, circle([x, y], radius)),
    group(LETTERING, text([x + 0.75 * radius + 0.5, y + 0.75 * radius + 3.5], 'A', { size: 4, bold: true })),
  ].join('\n');
}
