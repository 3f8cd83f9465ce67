import { column, type Level } from '../stack/column.js';
import { chordsOf, circlePoints, type Point } from '../stack/contour.js';
import type { Feature } from '../stack/stack.js';

/** A pit in the top face that ends in a floor. @param levels from its floor up to the face */
export function pit(levels: readonly Level[]): Feature {
  const { first, last, walls, faces } = column(levels, 'outside');
  return { holes: { top: [last] }, walls, faces: [...faces, { looks: 'up', outer: first, holes: [] }] };
}

/** A pit with upright walls. Lengths in mm. */
export function flatPit(outline: readonly Point[], depth: number, top: number): Feature {
  return pit([
    { z: top - depth, outline },
    { z: top, outline },
  ]);
}

/** Share of a dimple's depth that its flat middle may miss. */
const FLAT_MIDDLE = 0.02;

/** A hollow shaped like the cap of a ball: at the face `diameter` wide, `depth` deep in the middle. */
export function dimplePit(diameter: number, asked: number, top: number, tolerance: number): Feature {
  // No deeper than a half ball, whatever compensation makes of both.
  const depth = Math.min(asked, diameter / 2);
  const ball = (diameter ** 2 / 4 + depth ** 2) / (2 * depth);
  const count = chordsOf(diameter / 2, tolerance);
  const rim = Math.acos((ball - depth) / ball);
  const middle = Math.acos(1 - Math.min(FLAT_MIDDLE * depth, tolerance) / ball);
  const steps = Math.max(2, Math.ceil((rim - middle) / (2 * Math.acos(1 - tolerance / ball))));
  return pit(
    Array.from({ length: steps + 1 }, (_, i) => {
      const angle = middle + ((rim - middle) * i) / steps;
      const z = i === steps ? top : top - depth + ball * (1 - Math.cos(angle));
      return { z, outline: circlePoints(ball * Math.sin(angle), tolerance, [0, 0], count) };
    }),
  );
}
