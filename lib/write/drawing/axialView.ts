import { figure } from '../figure.js';
import { boxOf } from './closest.js';
import { cutEnd } from './cutEnd.js';
import { type CutPart, cutFace } from './cutParts.js';
import { dimension } from './dimension.js';
import { type Placing, toPage } from './placing.js';
import { CHAIN, PLAIN } from './styles.js';
import type { Subject } from './subject.js';
import { group, line, type PagePoint, text } from './svg.js';

/** How far axes run out, and how far dimensions stand off, mm. */
const OVERRUN = 3;
const OFF = 8;
/** The right end of the trace stands beyond the height's dimension, mm. */
const BEYOND = 13;

/**
 * The set cut along its axis: hatched parts, axes, reference lines, the trace of the section across, height and outer
 * size.
 * @param height of the plane of the section across, mm
 */
export function axialView(
  subject: Subject,
  cut: readonly CutPart[],
  height: number,
  placing: Placing,
): string {
  const [left, low, right, high] = boxOf(cut.flatMap(({ loops }) => loops));
  const page = (u: number, v: number): PagePoint => toPage([u, v], placing);
  const onPlane = subject.gears.filter(({ centre }) => Math.abs(centre[1]) < 1e-6);
  const upright = onPlane.map(({ centre }) => {
    const [from, to] = [page(centre[0], high), page(centre[0], low)];
    return line([from[0], from[1] - OVERRUN], [to[0], to[1] + OVERRUN]);
  });
  const cutting = [page(left, height), page(right, height)] as const;
  return [
    ...cut.map((part) => cutFace(part, placing)),
    group(CHAIN, ...new Set(upright)),
    group(CHAIN, line([cutting[0][0] - OVERRUN, cutting[0][1]], [cutting[1][0] + BEYOND, cutting[1][1]])),
    cutEnd([cutting[0][0] - OVERRUN, cutting[0][1]], -1, 'down', 'B'),
    cutEnd([cutting[1][0] + BEYOND, cutting[1][1]], 1, 'down', 'B'),
    dimension(page(right, low), page(right, high), -OFF, figure(high - low)),
    outerSize(subject, cut, page, low),
    group(
      PLAIN,
      text([page(0, 0)[0] - 4, page(0, high)[1] - 5], 'A–A', { size: 4, bold: true, anchor: 'end' }),
    ),
  ].join('\n');
}

/** Diameter of the part around all others, or the whole width where there is none. */
function outerSize(
  { around, parts }: Subject,
  cut: readonly CutPart[],
  page: (u: number, v: number) => PagePoint,
  low: number,
): string {
  const outer = parts.find(({ name }) => name === around);
  if (outer) {
    const { positions } = outer.mesh;
    let radius = 0;
    for (let i = 0; i < positions.length; i += 3)
      radius = Math.max(radius, Math.hypot(positions[i], positions[i + 1]));
    return dimension(page(-radius, low), page(radius, low), -OFF, `⌀ ${figure(2 * radius)}`);
  }
  const [left, , right] = boxOf(cut.flatMap(({ loops }) => loops));
  return dimension(page(left, low), page(right, low), -OFF, figure(right - left));
}
