import type { CouponSheet } from '../../proof/coupon/couponSheet.js';
import { meshBounds } from '../../proof/mesh/volume.js';
import type { Part } from '../../solid/mesh.js';
import { levelPlane, meshSection } from '../drawing/section.js';
import { EDGE, PLAIN } from '../drawing/styles.js';
import { group, num, type PagePoint, shape, text } from '../drawing/svg.js';
import { escapeText } from '../escape.js';

/** Paper around the drawing, and room for a line of text below it, mm. */
const MARGIN = 8;
const TITLE = 12;
/** Outlines may leave the cut of the mesh by so much, mm. */
const TOLERANCE = 0.01;

/** A coupon cut at half the gauge's height, seen from above, at full size, with the numbers on it: an SVG document. */
export function couponDrawing({ name, stations }: CouponSheet, parts: readonly Part[]): string {
  const boxes = parts.map(({ mesh }) => meshBounds(mesh));
  const side = (axis: 0 | 1) =>
    [Math.min(...boxes.map(({ min }) => min[axis])), Math.max(...boxes.map(({ max }) => max[axis]))] as const;
  const [left, right] = side(0);
  const [bottom, top] = side(1);
  const [width, height] = [right - left + 2 * MARGIN, top - bottom + 2 * MARGIN + TITLE];
  const page = ([x, y]: readonly [number, number]): PagePoint => [x - left + MARGIN, top - y + MARGIN];
  const cut = (part: Part, z: number) =>
    meshSection(part.mesh, levelPlane(z), TOLERANCE).map((loop) => loop.map(page));
  const frame = parts[0];
  const gauge = boxes[boxes.length - 1];
  const numbers = (numbersFrom(parts) + boxes[0].max[2]) / 2;
  const gaps = stations.map(({ gap }) => gap.asked.toFixed(2)).join(', ');
  const title = `${name}: gaps ${gaps} mm; scale 1:1`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}" role="img" aria-label="${escapeText(title)}">`,
    `<rect width="${num(width)}" height="${num(height)}" fill="#fff"/>`,
    group({ ...EDGE, fill: '#eee' }, ...parts.map((part) => shape(cut(part, gauge.max[2] / 2)))),
    group({ fill: '#000', stroke: 'none' }, shape(cut(frame, numbers))),
    group(PLAIN, text([MARGIN, height - MARGIN], title, { size: titleSize(title, width) })),
    '</svg>\n',
  ].join('\n');
}

/** Height at which the numbers stand on the frame: that of the pinions' upper faces. */
function numbersFrom(parts: readonly Part[]): number {
  return meshBounds(parts[1].mesh).max[2];
}

/** Letters that the page's width has room for, about, mm. */
function titleSize(title: string, width: number): number {
  return Math.min(4, (width - 2 * MARGIN) / (0.6 * title.length));
}
