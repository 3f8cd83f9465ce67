import * as z from 'zod';
import { number, whole, word } from './fields.js';
import { ranges } from './ranges.js';

const size = (least: number, most: number, description: string, source: string, example: number) =>
  number(least, most, { description, unit: 'mm', source, examples: [example] });

const practice = 'range by common practice';

const bossHeight = size(0.4, 100, 'Height above the plate', practice, 8);

const boss = z
  .union([
    z.literal('none'),
    z.discriminatedUnion('shape', [
      z.strictObject({ shape: z.literal('none') }),
      z.strictObject({
        shape: z.literal('round'),
        diameter: size(...ranges.boss, 'Diameter of the boss', practice, 16),
        height: bossHeight,
      }),
      z.strictObject({
        shape: z.literal('hexagon'),
        acrossFlats: size(...ranges.boss, 'Width across flats', practice, 16),
        height: bossHeight,
      }),
      z.strictObject({
        shape: z.literal('square'),
        acrossFlats: size(...ranges.boss, 'Width across flats', practice, 16),
        height: bossHeight,
      }),
      z.strictObject({
        shape: z.literal('D'),
        diameter: size(...ranges.boss, 'Diameter of the round side', practice, 16),
        acrossFlat: size(
          ranges.boss[0] / 2,
          ranges.boss[1],
          'From the flat to the far side: half the diameter to 0.98 × the diameter',
          practice,
          14,
        ),
        height: bossHeight,
      }),
    ]),
  ])
  .default({ shape: 'none' })
  .meta({
    description: 'What stands on the upper plate for whatever is driven; needs plates above or both',
    source: 'common practice',
  });

const bolts = z
  .union([
    z.literal('none'),
    z.strictObject({
      diameter: size(...ranges.plateBolt, 'Diameter of each hole', practice, 3.4),
      count: whole(...ranges.plateBolts, {
        description: 'How many holes, evenly spaced from the middle of an opening between planets on',
        source: 'common practice',
        defaultRule: 'planets.count',
        examples: [3],
      }).optional(),
      circle: number(1, 2000, {
        description: 'Diameter of the circle that they stand on',
        unit: 'mm',
        source: 'common practice',
        defaultRule:
          'midway between the inner and the outer edge of the plate, or of what a boss leaves of it',
        examples: [40],
      }).optional(),
    }),
  ])
  .default('none')
  .meta({
    description:
      'Holes through the upper plate, or the lower one where there is no other, to bolt something on',
    source: 'common practice',
  });

const pin = z
  .strictObject({
    diameter: number(...ranges.pin, {
      description: 'Largest diameter of each pin',
      unit: 'mm',
      source: 'common practice',
      defaultRule: "half the planets' root diameter, 10 at most",
      examples: [8],
    }).optional(),
    form: word(['straight', 'waisted', 'barrelled'], {
      description:
        'straight: a cylinder. waisted: narrower at mid face. barrelled: wider at mid face. The bore of a planet follows the pin, so waisted and barrelled pins hold it along the axis and keep it from tipping',
      source: 'common practice; their cones lean by 45°, which prints without support',
    }).default('straight'),
    depth: number(0, 50, {
      description: 'How much less the radius is where a waisted or barrelled pin is thinnest',
      unit: 'mm',
      source: 'common practice, no source',
      defaultRule: '0 for straight pins, else 3 × carrier.gap',
      examples: [0.8],
    }).optional(),
  })
  .meta({ description: 'What the planets turn on; left out in a cage' });

const body = z.strictObject({
  form: word(['pins', 'cage'], {
    description:
      'pins: a pin through each planet. cage: posts between the planets, which only keep them spaced and drive nothing but their tips',
    source: 'common practice',
  }).default('pins'),
  plates: word(['above', 'below', 'both'], {
    description:
      'Where the plates are. below: flat on the bed, sun and ring stand around it. above: over the gears. both: joined by the pins or posts; together they hold every gear along the axis',
    source: 'common practice',
  }).default('below'),
  thickness: number(0.2, 50, {
    description: 'Thickness of each plate, in whole layers',
    unit: 'mm',
    source: 'common practice, no source',
    defaultRule: '3, up to whole layers',
    examples: [3],
  }).optional(),
  gap: number(...ranges.gap, {
    description:
      'Radial distance between a pin and its bore (along the normal on cones), between a post and its neighbours, and between a plate and the sun and ring beside it',
    unit: 'mm',
    source: 'common practice: as between flanks',
    defaultRule: 'fit.gap',
    examples: [0.25],
  }).optional(),
  axialGap: whole(1, 10, {
    description: 'Distance between a plate and the gears under or over it, in layers',
    source:
      'common practice, no source: one or two layers print on what is below them, as on the interface of a support, and come free',
  }).default(2),
  centre: word(['open', 'closed'], {
    description: 'Whether the upper plate is open over the sun',
    source: 'common practice',
    defaultRule: 'closed under a boss, else open',
    examples: ['open'],
  }).optional(),
  pin: pin.optional(),
  boss,
  bolts,
});

/** What carries the planets. */
export const carrier = z
  .union([z.literal('none'), body])
  .default('none')
  .meta({
    description: 'none: the planets run free between sun and ring. Else a loose part that carries them',
    source: 'common practice',
  });

/** What keeps the parts together along the axis. */
export const retention = word(['none', 'herringbone', 'lips', 'both'], {
  description:
    'What of the gears holds the parts together along the axis. herringbone needs helix.form herringbone; lips are cones on ring and sun over the bevelled ends of the planets; both is both',
  source: 'common practice',
  defaultRule:
    'herringbone where helix.form is herringbone, else none; with lips given, both where helix.form is herringbone, else lips',
  examples: ['none'],
}).optional();

/** Cones that close the ends of tooth spaces. */
export const lips = z
  .strictObject({
    on: word(['ring', 'sun', 'both'], {
      description: 'Which gears have them, at both ends of their tooth spaces',
      source: 'common practice: the ring holds the planets, the planets hold the sun',
      defaultRule: 'both',
      examples: ['both'],
    }).optional(),
    gap: number(...ranges.gap, {
      description: 'Distance to the bevels of the planets, along the normal',
      unit: 'mm',
      source: 'common practice',
      defaultRule: 'the greater of fit.gap and 2 × printer.firstLayerGrowth + 0.02',
      examples: [0.32],
    }).optional(),
    reach: number(...ranges.lipReach, {
      description: 'How far they stand out from the root circles at the end faces, at most as the gap allows',
      unit: 'mm',
      source: 'common practice',
      defaultRule: 'as far as bevel.size and lips.gap allow',
      examples: [1],
    }).optional(),
  })
  .optional()
  .meta({
    description:
      'Lips, as steep as the bevels (bevel.angle, 45° prints without support) and sized by them; only with retention lips or both',
    source: 'common practice',
  });
