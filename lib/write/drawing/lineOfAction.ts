import type { PartOutline } from '../../solid/setOutlines.js';
import { inPlane } from './outlines.js';

type Point = readonly [number, number];

/** Where the flanks of sun and planet stand across their gap, in the plane of the set. mm. */
export interface FlankGap {
  /** On the sun's flank. */
  sun: Point;
  /** On the planet's flank. */
  planet: Point;
  /** Where the pitch circles touch. */
  pitchPoint: Point;
  /** Distance of the two flanks along the line of action, which meets both at right angles. */
  gap: number;
}

/**
 * The gap between sun and planet measured on their drawn outlines, along the line of action: the common
 * tangent of the base circles through the pitch point, which is normal to involute flanks.
 * @param ratio teeth of the sun to teeth of sun and planet together
 * @param baseRadii of sun and planet, mm
 * @returns null when no two flanks face each other on that line
 */
export function flankGap(
  sun: PartOutline,
  planet: PartOutline,
  ratio: number,
  baseRadii: readonly [number, number],
): FlankGap | null {
  const across = [planet.centre[0] - sun.centre[0], planet.centre[1] - sun.centre[1]] as const;
  const distance = Math.hypot(...across);
  const pressureAngle = Math.acos((baseRadii[0] + baseRadii[1]) / distance);
  const pitchPoint = [sun.centre[0] + ratio * across[0], sun.centre[1] + ratio * across[1]] as const;
  const heading = Math.atan2(across[1], across[0]) + Math.PI / 2 - pressureAngle;
  const along: Point = [Math.cos(heading), Math.sin(heading)];
  const at = (t: number): Point => [pitchPoint[0] + t * along[0], pitchPoint[1] + t * along[1]];
  let best: FlankGap | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const s of crossings(inPlane(sun.outline, sun), pitchPoint, along)) {
    for (const p of crossings(inPlane(planet.outline, planet), pitchPoint, along)) {
      // The driving flanks of the sun face along the line of action, the planet's face against it.
      if (!(s.leaves && !p.leaves && p.at > s.at)) continue;
      const off = Math.abs(s.at + p.at) / 2 + 4 * (p.at - s.at);
      if (off < nearest) {
        nearest = off;
        best = { sun: at(s.at), planet: at(p.at), pitchPoint, gap: p.at - s.at };
      }
    }
  }
  return best;
}

/** Where a line crosses a closed counter-clockwise outline, and whether it leaves the body there. */
function crossings(outline: readonly Point[], from: Point, along: Point): { at: number; leaves: boolean }[] {
  const found: { at: number; leaves: boolean }[] = [];
  const side = ([x, y]: Point): number => along[0] * (y - from[1]) - along[1] * (x - from[0]);
  const place = ([x, y]: Point): number => along[0] * (x - from[0]) + along[1] * (y - from[1]);
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length];
    const [da, db] = [side(a), side(b)];
    if (da < 0 === db < 0) return;
    found.push({ at: place(a) + (da / (da - db)) * (place(b) - place(a)), leaves: da < 0 });
  });
  return found;
}
