import { type Problem, problemOf } from '../refusal.js';
import { number, word } from '../spec/fields.js';
import { featureRanges as sizes } from '../spec/ranges.js';
import { clearanceHole, diameter, fasteners, series, size } from './fasteners.js';
import { asked, type Feature, type Given, length, rounded } from './feature.js';
import { atLeast, atMost, type Body, CORNER, WALLED } from './room.js';
import type { ScrewHole } from './screw.js';

const schema = asked(
  'Pocket for a hexagon nut in an end face, with a clearance hole to the other',
  'ISO 4032',
  {
    size,
    series,
    diameter,
    at: word(['bottom', 'top'], {
      description:
        'End face with the pocket; below, its ceiling is a cone at 45° that prints without support',
      source: 'common practice',
    }).default('top'),
    clearance: number(0, 1, {
      description: 'Added to the nut’s width across flats and height',
      unit: 'mm',
      source: 'common practice, no source',
      examples: [0.2],
    }).default(0.2),
    acrossFlats: length(...sizes.nutFlats, 'Width across flats of the pocket', 7.2, {
      source: 'ISO 4032',
      defaultRule: 'the largest nut of the size, and the clearance',
    }).optional(),
    depth: length(...sizes.nutDepth, 'Depth of the pocket', 3.4, {
      source: 'ISO 4032',
      defaultRule: 'the highest nut of the size, and the clearance',
    }).optional(),
  },
  { size: 'M4' },
);

/** A hexagonal pocket in an end face, `diameter` the hole from there to the other one. */
export interface NutPocket extends Required<Given<typeof schema>> {}

/** A nut about the axis. */
export const nut = {
  schema,
  complete: (file): NutPocket => ({
    ...file,
    acrossFlats: file.acrossFlats ?? rounded(fasteners[file.size].nutFlats + file.clearance),
    depth: file.depth ?? rounded(fasteners[file.size].nutHeight + file.clearance),
    diameter: clearanceHole(file),
  }),
  not: ['bore'],
  rules: { 0: agrees, 1: walls, 2: shaft },
  drawn: { acrossFlats: 'opening', diameter: 'opening', depth: 'length', clearance: 'asked' },
  reads: {
    'screw hole': (own, { screw }: { screw?: ScrewHole }) => (screw ? undefined : own.diameter),
    'nut pocket': (own) => own.acrossFlats,
  },
  opens: (own) => own.diameter,
  hole: ({ diameter, at, acrossFlats, depth }) => ({ diameter, [at]: { acrossFlats, depth } }),
} satisfies Feature<Given<typeof schema>, NutPocket>;

/** One screw goes through both. */
function agrees(own: NutPocket, { screw }: { screw?: ScrewHole }, { part }: Body): Problem[] {
  if (!screw) return [];
  const found: Problem[] = [];
  if (own.size !== screw.size) {
    const rule = `must be the size of ${part}.screw, ${screw.size}`;
    found.push(problemOf('differs', `${part}.nut.size`, own.size, rule, [screw.size]));
  }
  if (own.at === screw.countersink) {
    const rule = `must be the end face without the countersink of ${part}.screw`;
    found.push(problemOf('excluded', `${part}.nut.at`, own.at, rule, [own.at === 'top' ? 'bottom' : 'top']));
  }
  return found;
}

function walls({ diameter, acrossFlats }: NutPocket, _: object, { part, root, wall }: Body): Problem[] {
  const most = 2 * (root - wall);
  const path = `${part}.nut.acrossFlats`;
  const least = diameter + 0.1;
  return [
    ...atMost(`${part}.nut.diameter`, diameter, most, WALLED, sizes.screwHole[0]),
    ...atMost(path, acrossFlats, most / CORNER.hexagon, WALLED, Math.max(sizes.nutFlats[0], least)),
    ...atLeast(path, acrossFlats, least, 'a nut is wider than its hole'),
  ];
}

/** What head, nut and the cone over a nut below leave of the shaft. */
function shaft(
  own: NutPocket,
  { screw }: { screw?: ScrewHole },
  { part, floor, faceWidth }: Body,
): Problem[] {
  const { depth, at, acrossFlats, diameter } = own;
  const head = screw && screw.countersink !== 'none' ? (screw.headDiameter - screw.diameter) / 2 : 0;
  const cone = at === 'bottom' ? (acrossFlats * CORNER.hexagon - diameter) / 2 : 0;
  const why = 'something must be left for the screw to hold';
  return atMost(`${part}.nut.depth`, depth, faceWidth - head - cone - floor, why, sizes.nutDepth[0]);
}
