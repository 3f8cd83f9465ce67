import type { Problem } from '../refusal.js';
import { word } from '../spec/fields.js';
import { featureRanges as sizes } from '../spec/ranges.js';
import { polygonPoints } from '../stack/contour.js';
import { AXLE } from './fasteners.js';
import { asked, type Feature, type Given, length } from './feature.js';
import { inFrame } from './frame.js';
import { flatPit } from './pits.js';
import { atLeast, atMost, type Body, CORNER, WALLED } from './room.js';

const schema = asked(
  'Pit in the top face for the peg of a crank handle',
  'common practice',
  {
    shape: word(['square', 'hexagon'], {
      description: 'Section of the peg',
      source: 'common practice',
    }).default('hexagon'),
    acrossFlats: length(...sizes.crankFlats, 'Width across flats of the peg', 8),
    clearance: length(0, 2, 'Pit wider than peg, between opposite flats', 0.3, {
      source: 'common practice, no source',
    }).default(0.3),
    depth: length(...sizes.crankDepth, 'Depth of the pit', 8),
    handle: length(...sizes.crankHandle, 'Length of a handle printed beside the set, axis to axis', 40, {
      defaultRule: 'no handle',
    }).optional(),
  },
  { acrossFlats: 8, depth: 8 },
);

/** A pit in the top face that a crank handle's peg goes into; no `handle` is printed where it is left out. */
export interface CrankSocket extends Given<typeof schema> {}

/** A crank about the axis, its handle beside the set. */
export const crank = {
  schema,
  not: ['bore', 'screw', 'nut', 'knob'],
  rules: { 1: room },
  drawn: {
    acrossFlats: 'standing',
    // Of pit and peg, which are both set back.
    clearance: 'gap',
    depth: 'length',
    handle: 'length',
  },
  reads: { 'crank socket': socket },
  loose: {
    part: 'crank-handle' as const,
    reads: { peg: (own) => (own.handle === undefined ? undefined : own.acrossFlats) },
  },
  entered: { words: 'crank socket', width: socket },
  reached: true,
  sweeps: 'handle',
  widens: { key: 'handle', least: sizes.crankHandle[0] },
  pit: (own, top, { frame }) =>
    flatPit(inFrame(polygonPoints(sidesOf(own), socket(own)), frame), own.depth, top),
} satisfies Feature<CrankSocket>;

/** The shoulder's ledge around the corners of the socket. Common practice. */
const LEDGE = 1.5;
/** Material around peg and axle, mm. */
const AROUND = 3;

/** Width across flats of the pit, mm. */
function socket({ acrossFlats, clearance }: CrankSocket): number {
  return acrossFlats + clearance;
}

/** Corners of peg and pit. */
export function sidesOf({ shape }: CrankSocket): number {
  return shape === 'square' ? 4 : 6;
}

/** Radius of the arm's rounded ends, mm. */
export function armRadius({ shape, acrossFlats }: CrankSocket): number {
  return Math.max((CORNER[shape] * acrossFlats) / 2, AXLE / 2) + AROUND;
}

/** Radius of the shoulder on a gear with such a root circle, mm: as narrow as serves, since letters may stand around it. */
export function shoulderRadius(own: CrankSocket, rootRadius: number): number {
  return Math.min((CORNER[own.shape] * socket(own)) / 2 + LEDGE, rootRadius);
}

function room(own: CrankSocket, _: object, { part, root, wall, floor, faceWidth }: Body): Problem[] {
  const { shape, acrossFlats, clearance, depth, handle } = own;
  const path = (key: string) => `${part}.crank.${key}`;
  const widest = (2 * (root - wall)) / CORNER[shape] - clearance;
  const least = (CORNER[shape] * socket(own)) / 2 + AXLE / 2 + wall;
  return [
    ...atMost(path('acrossFlats'), acrossFlats, widest, WALLED, sizes.crankFlats[0]),
    ...atMost(path('depth'), depth, faceWidth - floor, 'four layers of floor', sizes.crankDepth[0]),
    ...(handle === undefined
      ? []
      : atLeast(path('handle'), handle, least, 'two lines of wall between socket and axle')),
  ];
}
