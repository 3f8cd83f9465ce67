import * as z from 'zod';
import { gearFeatures, ringFeatures } from './features/schema.js';
import { number, whole, word } from './fields.js';
import { ranges } from './ranges.js';
import { bore, shift, teeth } from './schemaGears.js';
import { USUAL_WALL } from './usual.js';

/** What every gear with teeth outside may have. */
const external = (part: string) => ({
  teeth: teeth(part),
  profileShift: shift(`Profile shift coefficient x of ${part}, in normal modules`),
  bore,
  ...gearFeatures,
});

/** A panel mount is for what has its axis in the middle of a set. */
const { mount: _, ...features } = ringFeatures;

/** What every gear with teeth inside may have. */
const ringed = (part: string, rule: string) => ({
  internal: z.literal(true).meta({ description: 'Teeth inside', source: 'ISO 1122-1' }),
  teeth: whole(...ranges.ringTeeth, {
    description: `Number of teeth of ${part}`,
    source: 'range by common practice',
    examples: [45],
  }),
  profileShift: number(...ranges.ringShift, {
    description: `Profile shift coefficient x of ${part}, in normal modules; positive moves its teeth outward`,
    source: 'ISO 21771',
    defaultRule: rule,
    examples: [0],
  }).optional(),
  rim: number(...ranges.rim, {
    description: `Wall outside the root circle of ${part}`,
    unit: 'mm',
    source: 'common practice: 1.2 times the tooth depth, 3 mm at least',
    defaultRule: USUAL_WALL,
    examples: [5],
  }).optional(),
  ...features,
});

const outside = z
  .literal(false)
  .optional()
  .meta({ description: 'Teeth outside', source: 'ISO 1122-1', defaultRule: 'false' });

/** The smaller gear of a pair, or the gear that runs on a bar. */
export const pinion = z.strictObject(external('the pinion')).meta({
  description: 'The gear that the others run with; its axis is at the origin',
  examples: [{ teeth: 15 }],
});

/** The larger gear of a pair. */
export const wheel = z
  .discriminatedUnion('internal', [
    z.strictObject({ internal: outside, ...external('the wheel') }),
    z.strictObject(ringed('the wheel around the pinion', '0; found where profileShift is solve')),
  ])
  .meta({
    description: 'The gear that the pinion runs with: beside it, or around it with internal: true',
    examples: [{ teeth: 45 }],
  });

/** One gear by itself. */
export const gear = z
  .discriminatedUnion('internal', [
    z.strictObject({ internal: outside, ...external('the gear') }),
    z.strictObject({
      ...ringed('the gear', '0'),
      mateTeeth: whole(...ranges.teeth, {
        description:
          'Teeth of the smallest gear that it is to run with: its tips are cut back and its root roundings made for that one',
        source: 'involute interference, ISO 21771 and handbooks',
        defaultRule: `a third of its teeth, ${ranges.teeth[0]} at least`,
        examples: [15],
      }).optional(),
    }),
  ])
  .meta({ description: 'The gear, with teeth inside where internal is true', examples: [{ teeth: 15 }] });

/** The bar of a rack and pinion. */
export const bar = z
  .strictObject({
    teeth: whole(...ranges.barTeeth, {
      description: 'Number of whole teeth of the bar',
      source: 'range by common practice',
      defaultRule: 'as many as the length has room for, or as the pinion has: one turn',
      examples: [20],
    }).optional(),
    length: number(...ranges.barLength, {
      description:
        'Length of the bar between its square ends; slanted teeth stand wholly between them, so their lean over the face width is added to their pitches',
      unit: 'mm',
      source: 'range by common practice',
      defaultRule: 'whole teeth from end to end',
      examples: [100],
    }).optional(),
    backing: number(...ranges.rim, {
      description: 'Wall of the bar behind the roots of its teeth',
      unit: 'mm',
      source: 'common practice: 1.2 times the tooth depth, 3 mm at least',
      defaultRule: USUAL_WALL,
      examples: [5],
    }).optional(),
  })
  .prefault({})
  .meta({ description: 'The toothed bar' });

/** Distance of the axes of a pair. */
export const centreDistance = number(0.5, 2000, {
  description:
    'Distance of the axes. With profileShift solve, shifts that are not given are found for it; with none it must be the one that the shifts give. The gap stays as asked either way',
  unit: 'mm',
  source: 'ISO 21771',
  defaultRule: 'the one that the profile shifts give',
  examples: [45],
}).optional();

/** How the shifts of a pair come about. */
export const pairShift = word(['none', 'solve'], {
  description:
    'none: the shifts are those given for each gear. solve: shifts that are not given are found for the centre distance',
  source: 'ISO 21771',
  defaultRule: 'solve where centreDistance is given and a shift is not, else none',
  examples: ['none'],
}).optional();

/** How a pair shares its shifts. */
export const pairShiftBalance = word(['sliding', 'none'], {
  description:
    'How pinion and wheel share the shift that is found: equal largest specific sliding as far as the limits of the teeth allow (a wheel around a pinion: as little shift of the pinion as they allow), or none of it for the wheel',
  source: 'ISO 21771 for sliding; common practice',
}).default('sliding');
