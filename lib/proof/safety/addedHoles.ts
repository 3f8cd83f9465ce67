import type { Mesh } from '../../solid/mesh.js';
import { signedArea } from '../../stack/contour.js';
import { type SectionLoop, sectionAt } from '../mesh/section.js';
import type { FingerGap } from './fingerGaps.js';
import { largestCircle } from './largestCircle.js';

/** Heights at which a body is cut, at most. */
const MOST_LEVELS = 12;
/** Openings whose middles lie this near to each other are one, mm. */
const SAME_PLACE = 1;
/** Nothing of a hand enters a narrower opening, mm. */
const LEAST = 1;

/** A hole at one height. */
interface Hole {
  centre: [number, number];
  /** Of the largest rod along z that enters, mm. */
  diameter: number;
}

/**
 * Holes and pits that a script cut into a part or closed with what it joined, each with the largest rod along the axis
 * that enters it. Where a hole changes its width the worst one counts, as `worse` has it.
 * @param whole for every triangle 1 where the part had it before
 * @param worse whether the first diameter is worse than the second one
 */
export function addedHoles(
  name: string,
  mesh: Mesh,
  whole: Uint8Array,
  worse: (diameter: number, other: number) => boolean,
): FingerGap[] {
  const found: Hole[] = [];
  for (const z of levelsOf(mesh, whole))
    for (const hole of holesAt(mesh, whole, z)) {
      const same = found.find(
        ({ centre: [x, y] }) => Math.hypot(x - hole.centre[0], y - hole.centre[1]) < SAME_PLACE,
      );
      if (!same) found.push(hole);
      else if (worse(hole.diameter, same.diameter)) same.diameter = hole.diameter;
    }
  return found.map(({ centre, diameter }) => ({
    where: `a hole of ${name} at ${centre.map((x) => x.toFixed(1)).join(', ')}`,
    diameter,
  }));
}

/** Heights between those at which new triangles have corners. */
function levelsOf({ positions, triangles }: Mesh, whole: Uint8Array): number[] {
  const heights = new Set<number>();
  triangles.forEach((vertex, i) => {
    if (!whole[Math.floor(i / 3)]) heights.add(positions[3 * vertex + 2]);
  });
  const sorted = [...heights].sort((a, b) => a - b);
  const middles = sorted.slice(1).map((height, i) => (height + sorted[i]) / 2);
  const step = Math.max(1, middles.length / MOST_LEVELS);
  return middles.filter((_, i) => Math.floor(i / step) !== Math.floor((i - 1) / step));
}

function holesAt(mesh: Mesh, whole: Uint8Array, z: number): Hole[] {
  const loops = sectionAt(mesh, z);
  return loops
    .filter((loop) => signedArea(loop.points) < 0 && isNew(loop, whole))
    .flatMap((loop) => {
      const others = loops.filter((one) => one !== loop).map(({ points }) => points);
      const circle = largestCircle(loop.points, others, LEAST / 2);
      return circle ? [{ centre: circle.centre, diameter: 2 * circle.radius }] : [];
    });
}

/** Whether more than half of an outline was not there before. */
function isNew({ points, triangles }: SectionLoop, whole: Uint8Array): boolean {
  let balance = 0;
  points.forEach(([x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length];
    balance += Math.hypot(nextX - x, nextY - y) * (whole[triangles[i]] ? -1 : 1);
  });
  return balance > 0;
}
