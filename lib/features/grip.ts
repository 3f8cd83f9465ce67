import type { Problem } from '../refusal.js';
import { whole } from '../spec/fields.js';
import { featureRanges as sizes } from '../spec/ranges.js';
import { circlePoints, type Point } from '../stack/contour.js';
import { asked, type Feature, type Given, length } from './feature.js';
import { atMost, type Body, countAtMost } from './room.js';
import { wavyOutline } from './wavyOutline.js';

const schema = asked(
  'Scallops around the ring',
  'common practice',
  {
    count: whole(3, 200, { description: 'How many', source: 'common practice', examples: [24] }),
    depth: length(...sizes.gripDepth, 'Depth of each, taken off the rim', 1.2),
  },
  { count: 24, depth: 1.2 },
);

/** Scallops around a ring. */
export interface Grip extends Given<typeof schema> {}

/** Scallops in the outer wall of a ring. */
export const grip = {
  schema,
  rules: { 0: wallLeft, 1: shallow },
  drawn: { depth: 'length', count: 'asked' },
} satisfies Feature<Grip>;

/** They leave a wall outside the root circle, wherever that is. */
function wallLeft({ depth }: Grip, _: object, { part, rim, wall }: Body): Problem[] {
  const why = 'two lines of wall outside the root circle';
  return atMost(`${part}.grip.depth`, depth, rim - wall, why, sizes.gripDepth[0]);
}

function shallow({ count, depth }: Grip, _: object, { part, root, rim }: Body): Problem[] {
  const most = Math.floor((Math.PI * (root + rim)) / depth);
  return countAtMost(`${part}.grip.count`, count, most, 'scallops at least twice as wide as deep');
}

/** What scallops leave of a wall outside the root circle, mm. */
export function leftOf(rim: number, { grip }: { grip?: Grip }): number {
  return rim - (grip?.depth ?? 0);
}

/** The outer wall of a ring of such a radius. */
export function gripOutline(
  radius: number,
  { grip }: { grip?: Grip },
  tolerance: number,
  count?: number,
): readonly Point[] {
  return grip
    ? wavyOutline(radius, grip.count, grip.depth, tolerance)
    : circlePoints(radius, tolerance, [0, 0], count);
}
