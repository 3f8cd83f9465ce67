import * as z from 'zod';
import { type Bore, shapesOf } from '../../features/bore.js';
import { gearSizes } from '../../tooth/gear.js';
import { follows, mm, whole, word } from '../fields.js';
import { ranges } from '../ranges.js';
import type { CommonSpec, Fit } from './common.js';
import type { Printer } from './printing.js';

/** Plates are this thick, up to whole layers, mm. Common practice, no source. */
const USUAL_THICKNESS = 3;
/** Pins are this share of the planets' root diameter, and no thicker than this, mm. Common practice, no source. */
const PIN_SHARE = 0.5;
const MOST_PIN = 10;
/** Cones of a pin are this many gaps deep, so that the planet is held whichever way it is pushed. */
const DEPTH_PER_GAP = 3;
/** What lips leave between first layers, mm. Common practice, no source. */
const FIRST_LAYER_SPARE = 0.02;

/** What stands on the upper plate. */
export type Boss = { shape: 'none' } | (Exclude<Bore, { shape: 'none' }> & { height: number });

const height = mm(0.4, 100, {
  description: 'Height above the plate',
  source: 'range by common practice',
  examples: [8],
});

const boss = shapesOf('the boss', ranges.boss, [16, 14], { height }).default({ shape: 'none' }).meta({
  description: 'What stands on the upper plate for whatever is driven; needs plates above or both',
  source: 'common practice',
});

const boltHoles = z.strictObject({
  diameter: mm(...ranges.plateBolt, {
    description: 'Diameter of each hole',
    source: 'range by common practice',
    examples: [3.4],
  }),
  count: whole(...ranges.plateBolts, {
    description: 'How many holes, evenly spaced from the middle of an opening between planets on',
    source: 'common practice',
    ...follows('planets.count', 3),
  }).optional(),
  circle: mm(1, 2000, {
    description: 'Diameter of the circle that they stand on',
    source: 'common practice',
    ...follows(
      'midway between the inner and the outer edge of the plate, or of what a boss leaves of it',
      40,
    ),
  }).optional(),
});

const bolts = z
  .union([z.literal('none'), boltHoles])
  .default('none')
  .meta({
    description:
      'Holes through the upper plate, or the lower one where there is no other, to bolt something on',
    source: 'common practice',
  });

const pin = z
  .strictObject({
    diameter: mm(...ranges.pin, {
      description: 'Largest diameter of each pin',
      source: 'common practice',
      ...follows("half the planets' root diameter, 10 at most", 8),
    }).optional(),
    form: word(['straight', 'waisted', 'barrelled'], {
      description:
        'straight: a cylinder. waisted: narrower at mid face. barrelled: wider at mid face. The bore of a planet follows the pin, so waisted and barrelled pins hold it along the axis and keep it from tipping',
      source: 'common practice; their cones lean by 45°, which prints without support',
    }).default('straight'),
    depth: mm(0, 50, {
      description: 'How much less the radius is where a waisted or barrelled pin is thinnest',
      source: 'common practice, no source',
      ...follows('0 for straight pins, else 3 × carrier.gap', 0.8),
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
  thickness: mm(0.2, 50, {
    description: 'Thickness of each plate, in whole layers',
    source: 'common practice, no source',
    ...follows('3, up to whole layers', 3),
  }).optional(),
  gap: mm(...ranges.gap, {
    description:
      'Radial distance between a pin and its bore (along the normal on cones), between a post and its neighbours, and between a plate and the sun and ring beside it',
    source: 'common practice: as between flanks',
    ...follows('fit.gap', 0.25),
  }).optional(),
  axialGap: whole(1, 10, {
    description: 'Distance between a plate and the gears under or over it, in layers',
    source:
      'common practice, no source: one or two layers print on what is below them, as on the interface of a support, and come free',
  }).default(2),
  centre: word(['open', 'closed'], {
    description: 'Whether the upper plate is open over the sun',
    source: 'common practice',
    ...follows('closed under a boss, else open', 'open'),
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
  ...follows(
    'herringbone where helix.form is herringbone, else none; with lips given, both where helix.form is herringbone, else lips',
    'none',
  ),
}).optional();

/** Cones that close the ends of tooth spaces. */
export const lips = z
  .strictObject({
    on: word(['ring', 'sun', 'both'], {
      description: 'Which gears have them, at both ends of their tooth spaces',
      source: 'common practice: the ring holds the planets, the planets hold the sun',
      ...follows('both', 'both'),
    }).optional(),
    gap: mm(...ranges.gap, {
      description: 'Distance to the bevels of the planets, along the normal',
      source: 'common practice',
      ...follows('the greater of fit.gap and 2 × printer.firstLayerGrowth + 0.02', 0.32),
    }).optional(),
    reach: mm(...ranges.lipReach, {
      description: 'How far they stand out from the root circles at the end faces, at most as the gap allows',
      source: 'common practice',
      ...follows('as far as bevel.size and lips.gap allow', 1),
    }).optional(),
  })
  .optional()
  .meta({
    description:
      'Lips, as steep as the bevels (bevel.angle, 45° prints without support) and sized by them; only with retention lips or both',
    source: 'common practice',
  });

type Body = z.output<typeof body>;
type LipsFile = z.output<typeof lips>;

export interface Pin extends Required<z.output<typeof pin>> {}
/** Holes through the outermost plate, evenly spaced; midway on the plate where `circle` is missing. */
export interface Bolts extends z.output<typeof boltHoles> {
  count: number;
}
/** A loose part that carries the planets; one without pins is a cage. */
export interface Carrier extends Required<Omit<Body, 'pin' | 'boss' | 'bolts'>> {
  pin?: Pin;
  boss: Boss;
  bolts: 'none' | Bolts;
}
/** Cones that close the ends of the tooth spaces; without `reach` they stand out as far as the gap allows. */
export interface Lips extends NonNullable<LipsFile> {
  on: 'ring' | 'sun' | 'both';
  gap: number;
}

/** What a carrier's defaults follow from: the file, and the planets in it. */
type Around = Pick<CommonSpec, 'module' | 'pressureAngle' | 'rack' | 'helix' | 'fit' | 'printer'> & {
  planets: { teeth: number; count: number; profileShift?: number };
};

/** The carrier with its defaults. */
export function completeCarrier(file: 'none' | Body, around: Around): 'none' | Carrier {
  if (file === 'none') return 'none';
  const { form, plates, axialGap, bolts, gap = around.fit.gap } = file;
  const boss: Boss = file.boss === 'none' ? { shape: 'none' } : file.boss;
  const completed: Carrier = {
    form,
    plates,
    thickness: file.thickness ?? wholeLayers(USUAL_THICKNESS, around.printer.layer),
    gap,
    axialGap,
    centre: file.centre ?? (boss.shape === 'none' ? 'open' : 'closed'),
    boss,
    bolts: bolts === 'none' ? 'none' : { ...bolts, count: bolts.count ?? around.planets.count },
  };
  if (form === 'cage') return completed;
  const pin = { form: 'straight' as const, ...file.pin };
  const depth = pin.depth ?? (pin.form === 'straight' ? 0 : DEPTH_PER_GAP * gap);
  return { ...completed, pin: { diameter: pin.diameter ?? usualPin(around), form: pin.form, depth } };
}

/** The lips with their defaults. */
export function completeLips(file: LipsFile, fit: Fit, printer: Printer): Lips {
  const roomy = 2 * printer.firstLayerGrowth + FIRST_LAYER_SPARE;
  return { ...file, on: file?.on ?? 'both', gap: file?.gap ?? Math.max(fit.gap, roomy) };
}

/** The least whole number of layers that is at least `height`, mm, free of the rounding of doubles. */
function wholeLayers(height: number, layer: number): number {
  return Number((Math.ceil(height / layer - 1e-9) * layer).toFixed(6));
}

function usualPin({ planets, module, pressureAngle, rack, helix }: Around): number {
  const { teeth, profileShift = 0 } = planets;
  const gear = { teeth, module, pressureAngle, helixAngle: helix.angle, rack, profileShift, internal: false };
  const half = PIN_SHARE * 2 * gearSizes(gear).rootRadius;
  return Math.max(ranges.pin[0], Math.floor(Math.min(MOST_PIN, half) * 10) / 10);
}
