import * as z from 'zod';
import { gearFeatures, planetFeatures, ringFeatures } from './features/schema.js';
import { number, whole, word } from './fields.js';
import { ranges } from './ranges.js';
import { USUAL_WALL } from './usual.js';

const boreSize = (description: string, least: number = ranges.bore[0]) =>
  number(least, ranges.bore[1], {
    description,
    unit: 'mm',
    source: 'range by common practice',
    examples: [6.6],
  });

/** Opening of any gear with teeth outside. */
export const bore = z
  .union([
    z.literal('none'),
    z.discriminatedUnion('shape', [
      z.strictObject({ shape: z.literal('none') }),
      z.strictObject({ shape: z.literal('round'), diameter: boreSize('Diameter of the bore') }),
      z.strictObject({ shape: z.literal('hexagon'), acrossFlats: boreSize('Width across flats') }),
      z.strictObject({ shape: z.literal('square'), acrossFlats: boreSize('Width across flats') }),
      z.strictObject({
        shape: z.literal('D'),
        diameter: boreSize('Diameter of the round side'),
        acrossFlat: boreSize(
          'From the flat to the far side: half the diameter to 0.98 × the diameter',
          ranges.bore[0] / 2,
        ),
      }),
    ]),
  ])
  .default({ shape: 'none' })
  .meta({
    description: 'Opening for a shaft; at least two lines of wall stay inside the root circle',
    source: 'common practice',
  });

/** Teeth of a gear with teeth outside. */
export const teeth = (part: string) =>
  whole(...ranges.teeth, {
    description: `Number of teeth of ${part}`,
    source: 'range by common practice',
    examples: [15],
  });

/** Its profile shift. */
export const shift = (description: string) =>
  number(...ranges.shift, {
    description,
    source: 'ISO 21771; 0 is the standard tooth',
    defaultRule: '0; found where profileShift is solve',
    examples: [0],
  }).optional();

/** The gear in the middle. */
export const sun = z
  .strictObject({
    teeth: teeth('the sun'),
    profileShift: shift('Profile shift coefficient x of the sun, in normal modules'),
    bore,
    ...gearFeatures,
  })
  .meta({ description: 'The gear in the middle', examples: [{ teeth: 15 }] });

/** The gears between sun and ring. */
export const planets = z
  .strictObject({
    teeth: teeth('each planet'),
    count: whole(...ranges.planets, {
      description: 'How many planets',
      source: 'range by common practice',
      examples: [3],
    }),
    spacing: word(['equal', 'nearest'], {
      description:
        'equal: planets at equal angles, which (sun + ring teeth) / count must allow by being whole. nearest: at the multiples of 360° / (sun + ring teeth) nearest to equal angles; unbalance and widest opening are reported',
      source: 'assembly condition of simple planetary sets (AGMA 6123 and handbooks, from memory)',
    }).default('equal'),
    profileShift: shift('Profile shift coefficient x of the planets, in normal modules'),
    ...planetFeatures,
  })
  .meta({ description: 'The gears between sun and ring', examples: [{ teeth: 15, count: 3 }] });

/** The outer gear. */
export const ring = z
  .strictObject({
    teeth: whole(...ranges.ringTeeth, {
      description: 'Number of teeth of the ring, more than a planet has',
      source: 'one centre distance for both meshes, ISO 21771',
      defaultRule: 'sun.teeth + 2 × planets.teeth',
      examples: [45],
    }).optional(),
    profileShift: number(...ranges.ringShift, {
      description:
        'Profile shift coefficient x of the ring, in normal modules; positive moves its teeth outward',
      source: 'one centre distance for both meshes, ISO 21771',
      defaultRule:
        'sun.profileShift + 2 × planets.profileShift where ring.teeth is sun.teeth + 2 × planets.teeth, else 0; found where profileShift is solve',
      examples: [0],
    }).optional(),
    rim: number(...ranges.rim, {
      description: 'Wall outside the root circle of the ring',
      unit: 'mm',
      source: 'common practice: 1.2 times the tooth depth, 3 mm at least',
      defaultRule: USUAL_WALL,
      examples: [5],
    }).optional(),
    ...ringFeatures,
  })
  .prefault({})
  .meta({ description: 'The outer gear' });
