import type { Problem } from '../refusal.js';
import { word } from '../spec/fields.js';
import { featureRanges as sizes } from '../spec/ranges.js';
import { clearanceHole, diameter, fasteners, series, size } from './fasteners.js';
import { asked, type Feature, type Given, length } from './feature.js';
import { atLeast, atMost, type Body, WALLED } from './room.js';

const schema = asked(
  'Clearance hole for a screw through the axis',
  'ISO 273; ISO 10642 for heads',
  {
    size,
    series,
    diameter,
    countersink: word(['none', 'bottom', 'top'], {
      description: 'End face with a 90° countersink, 45° from the vertical and so printable on either side',
      source: 'ISO 10642',
    }).default('none'),
    headDiameter: length(...sizes.screwHead, 'Diameter of the countersink at the face', 8.96, {
      source: 'ISO 10642, theoretical largest head',
      defaultRule: 'that of the size',
    }).optional(),
  },
  { size: 'M4' },
);

/** A clearance hole through the axis; `headDiameter` is that of a head in the end face that `countersink` names. */
export interface ScrewHole extends Required<Given<typeof schema>> {}

/** A hole through the axis. */
export const screw = {
  schema,
  complete: (file): ScrewHole => ({
    ...file,
    diameter: clearanceHole(file),
    headDiameter: file.headDiameter ?? fasteners[file.size].headDiameter,
  }),
  not: ['bore'],
  rules: { 1: room },
  drawn: { diameter: 'opening', headDiameter: 'opening' },
  reads: {
    'screw hole': (own) => own.diameter,
    countersink: (own) => (own.countersink === 'none' ? undefined : own.headDiameter),
  },
  opens: (own) => own.diameter,
  hole: ({ diameter, countersink, headDiameter }) => ({
    diameter,
    ...(countersink !== 'none' && { [countersink]: { headDiameter } }),
  }),
} satisfies Feature<Given<typeof schema>, ScrewHole>;

function room({ diameter, countersink, headDiameter }: ScrewHole, _: object, body: Body): Problem[] {
  const { part, root, wall, floor, faceWidth } = body;
  const most = 2 * (root - wall);
  const wide = atMost(`${part}.screw.diameter`, diameter, most, WALLED, sizes.screwHole[0]);
  if (countersink === 'none' || wide.length) return wide;
  const path = `${part}.screw.headDiameter`;
  const widest = Math.min(most, diameter + 2 * (faceWidth - floor));
  const least = diameter + 0.1;
  return [
    ...atMost(
      path,
      headDiameter,
      widest,
      `${WALLED}, four layers of shaft`,
      Math.max(sizes.screwHead[0], least),
    ),
    ...atLeast(path, headDiameter, least, 'a head is wider than its hole'),
  ];
}
