import type { Part } from '../../solid/mesh.js';
import { hatching } from './hatching.js';
import { type Placing, toPage } from './placing.js';
import { type Loop, meshSection, type Plane } from './section.js';
import { EDGE, HATCH, hatchOf } from './styles.js';
import { group, type PagePoint, shape } from './svg.js';

/** One part cut by a plane. */
export interface CutPart {
  name: string;
  loops: readonly Loop[];
}

/** The cut faces of all parts that a plane meets; `tolerance` as for `meshSection`, mm. */
export function cutParts(parts: readonly Part[], plane: Plane, tolerance: number): CutPart[] {
  return parts
    .map(({ name, mesh }) => ({ name, loops: meshSection(mesh, plane, tolerance) }))
    .filter(({ loops }) => loops.length > 0);
}

/** One hatched part: its outlines wide, its hatching narrow. */
export function cutFace({ name, loops }: CutPart, placing: Placing): string {
  const outlines = loops.map((loop) => onPage(loop, placing));
  return [
    group(HATCH, `<path d="${hatching(outlines, hatchOf(name))}"/>`),
    group(EDGE, shape(outlines)),
  ].join('\n');
}

function onPage(loop: Loop, placing: Placing): PagePoint[] {
  const points: PagePoint[] = [];
  for (const point of loop) points.push(toPage(point, placing));
  return points;
}
