import type { Problem } from '../refusal.js';
import { featureRanges as sizes } from '../spec/ranges.js';
import { column, type Level } from '../stack/column.js';
import { chordsOf, circlePoints, type Point } from '../stack/contour.js';
import type * as stack from '../stack/stack.js';
import { asked, type Feature, type Given, length } from './feature.js';
import { atMost, type Body, WALLED } from './room.js';

const holeSchema = asked(
  'Finger hole through each planet',
  'common practice',
  { diameter: length(...sizes.openingDiameter, 'Diameter of the hole', 14) },
  { diameter: 14 },
);
const dimpleSchema = asked(
  'Round hollow for a fingertip in the top face of each planet',
  'common practice',
  {
    diameter: length(...sizes.openingDiameter, 'Diameter of the hollow at the face', 12),
    depth: length(...sizes.dimpleDepth, 'Depth of the hollow, at most half its diameter', 2),
  },
  { diameter: 12, depth: 2 },
);
const pocketSchema = asked(
  'Flat-bottomed pit in the top face of each planet, for a coin or a bearing',
  'common practice',
  {
    diameter: length(...sizes.openingDiameter, 'Diameter of the pit', 16),
    depth: length(...sizes.pocketDepth, 'Depth of the pit', 2),
  },
  { diameter: 16, depth: 2 },
);

export interface Hole extends Given<typeof holeSchema> {}
export interface Pit extends Given<typeof dimpleSchema> {}

/** A finger hole through a planet; within a pocket, it leaves a shoulder. */
export const hole = {
  schema: holeSchema,
  rules: { 0: holeRoom },
  drawn: { diameter: 'opening' },
  reads: { 'finger hole': (own) => own.diameter },
  opens: (own) => own.diameter,
  entered: { words: 'finger holes', width: (own) => own.diameter },
  hole: (own) => ({ diameter: own.diameter }),
} satisfies Feature<Hole>;

/** A hollow like the cap of a ball. */
export const dimple = {
  schema: dimpleSchema,
  not: ['hole', 'pocket'],
  rules: { 0: dimpleRoom },
  drawn: { diameter: 'opening', depth: 'length' },
  reads: { dimple: (own) => own.diameter },
  opens: (own) => own.diameter,
  pit: ({ diameter, depth }, top, { tolerance }) => dimplePit(diameter, depth, top, tolerance),
} satisfies Feature<Pit>;

/** A flat-bottomed pit. */
export const pocket = {
  schema: pocketSchema,
  rules: { 0: pocketRoom },
  drawn: { diameter: 'opening', depth: 'length' },
  reads: { pocket: (own) => own.diameter },
  opens: (own) => own.diameter,
  entered: { words: 'pockets', width: (own) => own.diameter },
  hole: ({ diameter, depth }) => ({ top: { pocket: diameter, depth } }),
  pit: ({ diameter, depth }, top, { tolerance }) =>
    flatPit(circlePoints(diameter / 2, tolerance), depth, top),
} satisfies Feature<Pit>;

function holeRoom({ diameter }: Hole, { pocket }: { pocket?: Pit }, { part, root, wall }: Body): Problem[] {
  const widest = 2 * (root - wall);
  const [most, why] =
    pocket && pocket.diameter < widest
      ? [pocket.diameter - 2 * wall, 'two lines of shoulder under the pocket']
      : [widest - (pocket ? 2 * wall : 0), WALLED];
  return atMost(`${part}.hole.diameter`, diameter, most, why, sizes.openingDiameter[0]);
}

function pocketRoom({ diameter, depth }: Pit, _: object, body: Body): Problem[] {
  const { part, root, wall, floor, faceWidth } = body;
  return [
    ...atMost(`${part}.pocket.diameter`, diameter, 2 * (root - wall), WALLED, sizes.openingDiameter[0]),
    ...atMost(`${part}.pocket.depth`, depth, faceWidth - floor, 'four layers of floor', sizes.pocketDepth[0]),
  ];
}

function dimpleRoom({ diameter, depth }: Pit, _: object, body: Body): Problem[] {
  const { part, root, wall, floor, faceWidth } = body;
  const widest = 2 * (root - wall);
  const deepest = Math.min(Math.min(diameter, widest) / 2, faceWidth - floor);
  const why = 'half the diameter, and four layers of floor';
  return [
    ...atMost(`${part}.dimple.diameter`, diameter, widest, WALLED, sizes.openingDiameter[0]),
    ...atMost(`${part}.dimple.depth`, depth, deepest, why, sizes.dimpleDepth[0]),
  ];
}

/** A pit in the top face that ends in a floor. @param levels from its floor up to the face */
function pit(levels: readonly Level[]): stack.Feature {
  const { first, last, walls, faces } = column(levels, 'outside');
  return { holes: { top: [last] }, walls, faces: [...faces, { looks: 'up', outer: first, holes: [] }] };
}

/** A pit with upright walls. Lengths in mm. */
export function flatPit(outline: readonly Point[], depth: number, top: number): stack.Feature {
  return pit([
    { z: top - depth, outline },
    { z: top, outline },
  ]);
}

/** Share of a dimple's depth that its flat middle may miss. */
const FLAT_MIDDLE = 0.02;

/** A hollow shaped like the cap of a ball: at the face `diameter` wide, `depth` deep in the middle. */
function dimplePit(diameter: number, asked: number, top: number, tolerance: number): stack.Feature {
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
