import * as z from 'zod';
import { type FieldNotes, number, whole, word } from '../fields.js';
import { featureRanges } from '../ranges.js';
import { screwSizes } from './fasteners.js';

/**
 * The keys of features, one group a feature. To add one: a group here, its type beside, defaults in `complete.ts`,
 * its rule in `lib/spec/rules/features.ts`, its contours in `lib/solid/features`.
 */

/** A feature that is not there unless asked for. */
const feature = <T extends z.core.$ZodLooseShape>(
  description: string,
  source: string,
  shape: T,
  example: unknown,
) =>
  z
    .union([z.literal('none'), z.strictObject(shape)])
    .optional()
    .meta({ description, source, defaultRule: 'none', examples: [example] });

const length = (
  least: number,
  most: number,
  description: string,
  example: number,
  more: Partial<FieldNotes> = {},
) =>
  number(least, most, {
    description,
    unit: 'mm',
    source: 'range by common practice',
    examples: [example],
    ...more,
  });

const size = word(screwSizes, {
  description: 'Thread size',
  source: 'ISO 273 and ISO 4032 tables',
  examples: ['M4'],
});

const series = word(['fine', 'medium', 'coarse'], {
  description: 'Series of the clearance hole',
  source: 'ISO 273',
}).default('medium');

// Heads and nuts, 100 at most, are wider than their holes.
const diameter = length(...featureRanges.screwHole, 'Diameter of the hole on the print', 4.5, {
  source: 'ISO 273',
  defaultRule: 'the clearance hole of size and series',
}).optional();

const text = feature(
  'Letters on the top face: straight where the face is whole, along an arc elsewhere',
  'strokes are at least one line of the printer wide; common practice',
  {
    content: z
      .string()
      .regex(/^[ -~]*[!-~][ -~]*$/)
      .max(60)
      .meta({
        description:
          'What it says, in letters and signs of ASCII; {name}, {module}, {gap} and {teeth} stand for the set’s own',
        source: 'this version',
        examples: ['{gap}'],
      }),
    size: length(...featureRanges.letters, 'Height of the capital letters', 5).default(5),
    style: word(['raised', 'sunk'], {
      description: 'Above the face, or below it',
      source: 'common practice',
    }).default('sunk'),
    height: length(0.1, 5, 'How far the letters stand out or are sunk', 0.6, {
      source: 'common practice: three layers',
      defaultRule: '3 × printer.layer',
    }).optional(),
  },
  { content: '{gap}' },
);

/** Features of a gear with outside teeth. */
export const gearFeatures = {
  screw: feature(
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
      headDiameter: length(...featureRanges.screwHead, 'Diameter of the countersink at the face', 8.96, {
        source: 'ISO 10642, theoretical largest head',
        defaultRule: 'that of the size',
      }).optional(),
    },
    { size: 'M4' },
  ),
  nut: feature(
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
      clearance: length(0, 1, 'Added to the nut’s width across flats and height', 0.2, {
        source: 'common practice, no source',
      }).default(0.2),
      acrossFlats: length(...featureRanges.nutFlats, 'Width across flats of the pocket', 7.2, {
        source: 'ISO 4032',
        defaultRule: 'the largest nut of the size, and the clearance',
      }).optional(),
      depth: length(...featureRanges.nutDepth, 'Depth of the pocket', 3.4, {
        source: 'ISO 4032',
        defaultRule: 'the highest nut of the size, and the clearance',
      }).optional(),
    },
    { size: 'M4' },
  ),
  knob: feature(
    'Knob on the top face to turn the gear by',
    'common practice',
    {
      diameter: length(...featureRanges.knobDiameter, 'Diameter of the knob', 15),
      height: length(...featureRanges.knobHeight, 'Height of the knob above the face', 10),
      grips: whole(0, 60, {
        description: 'Hollows around the knob; 0 for a round one',
        source: 'common practice',
      }).default(8),
    },
    { diameter: 15, height: 10 },
  ),
  crank: feature(
    'Pit in the top face for the peg of a crank handle',
    'common practice',
    {
      shape: word(['square', 'hexagon'], {
        description: 'Section of the peg',
        source: 'common practice',
      }).default('hexagon'),
      acrossFlats: length(...featureRanges.crankFlats, 'Width across flats of the peg', 8),
      clearance: length(0, 2, 'Pit wider than peg, between opposite flats', 0.3, {
        source: 'common practice, no source',
      }).default(0.3),
      depth: length(...featureRanges.crankDepth, 'Depth of the pit', 8),
      handle: length(
        ...featureRanges.crankHandle,
        'Length of a handle printed beside the set, axis to axis',
        40,
        {
          defaultRule: 'no handle',
        },
      ).optional(),
    },
    { acrossFlats: 8, depth: 8 },
  ),
  text,
};

/** Features of each planet. */
export const planetFeatures = {
  hole: feature(
    'Finger hole through each planet',
    'common practice',
    {
      diameter: length(...featureRanges.openingDiameter, 'Diameter of the hole', 14),
    },
    { diameter: 14 },
  ),
  dimple: feature(
    'Round hollow for a fingertip in the top face of each planet',
    'common practice',
    {
      diameter: length(...featureRanges.openingDiameter, 'Diameter of the hollow at the face', 12),
      depth: length(...featureRanges.dimpleDepth, 'Depth of the hollow, at most half its diameter', 2),
    },
    { diameter: 12, depth: 2 },
  ),
  pocket: feature(
    'Flat-bottomed pit in the top face of each planet, for a coin or a bearing',
    'common practice',
    {
      diameter: length(...featureRanges.openingDiameter, 'Diameter of the pit', 16),
      depth: length(...featureRanges.pocketDepth, 'Depth of the pit', 2),
    },
    { diameter: 16, depth: 2 },
  ),
  text,
};

/** Features of a ring. */
export const ringFeatures = {
  grip: feature(
    'Scallops around the ring',
    'common practice',
    {
      count: whole(3, 200, { description: 'How many', source: 'common practice', examples: [24] }),
      depth: length(...featureRanges.gripDepth, 'Depth of each, taken off the rim', 1.2),
    },
    { count: 24, depth: 1.2 },
  ),
  flange: feature(
    'Flange around one end of the ring',
    'common practice; above, its underside is a cone at 45°',
    {
      diameter: length(...featureRanges.flangeDiameter, 'Diameter of the flange', 110),
      thickness: length(...featureRanges.flangeThickness, 'Thickness of the flange', 4),
      at: word(['bottom', 'top'], {
        description: 'End of the ring that has it, as printed',
        source: 'common practice',
      }).default('bottom'),
    },
    { diameter: 110, thickness: 4 },
  ),
  bolts: feature(
    'Bolt holes through the rim, or through the flange where the circle is outside the rim',
    'ISO 273',
    {
      circle: length(5, 2000, 'Diameter of the bolt circle', 100),
      count: whole(2, 60, { description: 'How many holes', source: 'common practice', examples: [6] }),
      size,
      series,
      diameter,
    },
    { circle: 100, count: 6, size: 'M3' },
  ),
  mount: feature(
    'Panel mount: the ring goes through a hole of a panel; its flange, the panel and a printed clamp ring are screwed together',
    'common practice',
    {
      hole: length(...featureRanges.mountHole, 'Diameter of the hole sawn in the panel', 95),
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
      diameter: length(...featureRanges.screwHole, 'Diameter of the screw holes', 3.4, {
        source: 'ISO 273, medium series',
        defaultRule: 'the clearance hole of the screws',
      }).optional(),
      headDiameter: length(
        ...featureRanges.screwHead,
        'Diameter of the 90° countersinks in the flange',
        6.72,
        {
          source: 'ISO 10642, theoretical largest head',
          defaultRule: 'that of the screws',
        },
      ).optional(),
      nutFlats: length(
        ...featureRanges.nutFlats,
        'Width across flats of the nut pockets in the clamp ring',
        5.7,
        {
          source: 'ISO 4032',
          defaultRule: 'the largest nut, and 0.2 mm',
        },
      ).optional(),
      nutDepth: length(...featureRanges.nutDepth, 'Depth of the nut pockets', 2.6, {
        source: 'ISO 4032',
        defaultRule: 'the highest nut, and 0.2 mm',
      }).optional(),
      clamp: length(1, 100, 'Thickness of the clamp ring', 5, {
        defaultRule: 'the nut pocket and 2 mm',
      }).optional(),
    },
    { hole: 95, panel: 12 },
  ),
  text,
};
