import { type Problem, problemOf } from '../refusal.js';
import { whole, word } from '../spec/fields.js';
import { featureRanges as sizes } from '../spec/ranges.js';
import { fasteners, screwSizes } from './fasteners.js';
import { asked, type Feature, type Given, length, rounded } from './feature.js';
import { atLeast, type Body, FLOOR_LAYERS, spaced } from './room.js';

const schema = asked(
  'Panel mount: the ring goes through a hole of a panel; its flange, the panel and a printed clamp ring are screwed together',
  'common practice',
  {
    hole: length(...sizes.mountHole, 'Diameter of the hole sawn in the panel', 95),
    panel: length(0.5, 100, 'Thickness of the panel', 12),
    clearance: length(
      0.1,
      10,
      'Least distance from the ring to the wall of the hole and to the clamp ring',
      0.5,
      {
        source: 'common practice, no source',
      },
    ).default(0.5),
    screw: word(screwSizes, {
      description: 'Thread size of the countersunk screws and their nuts',
      source: 'ISO 273, ISO 4032, ISO 10642',
    }).default('M3'),
    screws: whole(2, 60, { description: 'How many screws', source: 'common practice' }).default(6),
    circle: length(5, 3000, 'Diameter of the circle that the screws stand on', 105, {
      defaultRule: 'the hole and three clearance holes, rounded up to whole millimetres',
    }).optional(),
    diameter: length(...sizes.screwHole, 'Diameter of the screw holes', 3.4, {
      source: 'ISO 273, medium series',
      defaultRule: 'the clearance hole of the screws',
    }).optional(),
    headDiameter: length(...sizes.screwHead, 'Diameter of the 90° countersinks in the flange', 6.72, {
      source: 'ISO 10642, theoretical largest head',
      defaultRule: 'that of the screws',
    }).optional(),
    nutFlats: length(...sizes.nutFlats, 'Width across flats of the nut pockets in the clamp ring', 5.7, {
      source: 'ISO 4032',
      defaultRule: 'the largest nut, and 0.2 mm',
    }).optional(),
    nutDepth: length(...sizes.nutDepth, 'Depth of the nut pockets', 2.6, {
      source: 'ISO 4032',
      defaultRule: 'the highest nut, and 0.2 mm',
    }).optional(),
    clamp: length(1, 100, 'Thickness of the clamp ring', 5, {
      defaultRule: 'the nut pocket and 2 mm',
    }).optional(),
  },
  { hole: 95, panel: 12 },
);

export interface MountFile extends Given<typeof schema> {}

/** How a ring is held in a hole of a panel: flange on one side, a clamp ring on the other, screws through all. */
export interface Mount extends Required<MountFile> {}

/** A panel mount, its clamp ring beside the set. */
export const mount = {
  schema,
  complete(file, { layer }): Mount {
    const { medium, nutFlats, nutHeight, headDiameter } = fasteners[file.screw];
    const nutDepth = file.nutDepth ?? rounded(nutHeight + NUT_CLEARANCE);
    return {
      ...file,
      circle: file.circle ?? Math.ceil(file.hole + 3 * medium),
      diameter: file.diameter ?? medium,
      headDiameter: file.headDiameter ?? headDiameter,
      nutFlats: file.nutFlats ?? rounded(nutFlats + NUT_CLEARANCE),
      nutDepth,
      clamp: file.clamp ?? rounded(nutDepth + Math.max(UNDER_NUT, FLOOR_LAYERS * layer)),
    };
  },
  rules: { 2: room },
  drawn: {
    hole: 'length',
    panel: 'length',
    // Ring and clamp ring are both set back.
    clearance: 'opening',
    circle: 'length',
    diameter: 'opening',
    headDiameter: 'opening',
    nutFlats: 'opening',
    nutDepth: 'length',
    clamp: 'length',
    screws: 'asked',
  },
  reads: { 'screw hole': (own) => own.diameter, countersink: (own) => own.headDiameter },
  loose: {
    part: 'clamp-ring' as const,
    reads: {
      'outer diameter': (_, { flange }: { flange?: { diameter: number } }) => flange?.diameter,
      opening: (own, _, outer) => outer + 2 * own.clearance,
      'nut pocket': (own) => own.nutFlats,
    },
  },
  opens: (own) => own.diameter,
  drilled: ({ diameter, headDiameter, circle, screws }) => ({
    shape: { diameter, bottom: { headDiameter } },
    circle,
    count: screws,
  }),
} satisfies Feature<MountFile, Mount>;

/** Room for a nut in a printed pocket, mm, and material under it. Common practice, no source. */
const NUT_CLEARANCE = 0.2;
const UNDER_NUT = 2;

/** Height of a 90° head, mm. */
export function headHeight({ headDiameter, diameter }: Mount): number {
  return (headDiameter - diameter) / 2;
}

/** What is widest about each screw: its head, or its nut across the corners, mm. */
export function widestOf({ headDiameter, nutFlats }: Mount): number {
  return Math.max(headDiameter, (2 * nutFlats) / Math.sqrt(3));
}

function room(own: Mount, { flange }: { flange?: { at: string } }, body: Body): Problem[] {
  const { part, root, rim, wall, floor, faceWidth } = body;
  const { hole, clearance, circle, diameter, headDiameter, screw, screws, clamp, nutDepth, nutFlats } = own;
  const outer = root + rim;
  const path = (key: string) => `${part}.mount.${key}`;
  const found = [
    ...atLeast(path('headDiameter'), headDiameter, diameter + 0.1, 'a head is wider than its hole'),
    ...atLeast(path('nutFlats'), nutFlats, diameter + 0.1, 'a nut is wider than its hole'),
    ...atLeast(path('clamp'), clamp, nutDepth + floor, 'the nuts and four layers'),
    ...atLeast(path('hole'), hole, 2 * (outer + clearance), 'the ring and its clearance on both sides'),
  ];
  if (found.length) return found;
  if (headHeight(own) + floor > faceWidth - wall) {
    const rule = `finds no room: a flange for heads of ${screw} is thicker than the face width allows`;
    return [problemOf('no-room', `${part}.mount`, own, rule, ['none'])];
  }
  const beside = 'a screw hole’s width of panel beside each hole';
  const near = atLeast(path('circle'), circle, hole + 3 * diameter, beside);
  if (near.length) return near;
  if (flange?.at === 'top') {
    const rule = 'must be bottom where a panel is to lie against it: its upper side is flat there';
    return [problemOf('excluded', `${part}.flange.at`, 'top', rule, ['bottom'])];
  }
  return spaced(path('screws'), screws, circle, widestOf(own) + wall);
}
