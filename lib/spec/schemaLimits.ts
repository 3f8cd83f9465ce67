import * as z from 'zod';
import { number } from './fields.js';
import { ranges } from './ranges.js';
import { STURDY_WALL, usual } from './usual.js';

/** What the checks hold a set against. */
const all = z.strictObject({
  contactRatio: number(...ranges.contactRatio, {
    description: 'Total contact ratio below which a mesh is marked',
    source: `common practice: at least ${usual.contactRatio}`,
  }).default(usual.contactRatio),
  toothFeature: number(0, 10, {
    description: 'Least tip thickness and root space',
    unit: 'mm',
    source: 'common practice: one line',
    defaultRule: 'printer.lineWidth',
    examples: [0.45],
  }).optional(),
  wall: number(0, 20, {
    description: 'Least tooth thickness and wall',
    unit: 'mm',
    source: 'common practice: two lines',
    defaultRule: '2 × printer.lineWidth',
    examples: [0.9],
  }).optional(),
  rim: number(0, 100, {
    description: 'Least wall of a ring outside its root circle, or of a bar behind its roots',
    unit: 'mm',
    source: 'common practice: 1.2 times the tooth depth',
    defaultRule: STURDY_WALL,
    examples: [4],
  }).optional(),
  pinchForce: number(0, 10_000, {
    description: 'Least pinch on the rim, at two opposite places, at which a tooth may skip',
    unit: 'N',
    source:
      'mean tip pinch of women 11 lbf, about 50 N (Mathiowetz and others 1985, from memory); men 18 lbf',
  }).default(usual.pinchForce),
  sunTorque: number(0, 1000, {
    description: 'Least torque on the sun at which a tooth may skip',
    unit: 'N m',
    source: 'common practice, no source: a small knob turned with two fingers',
  }).default(usual.sunTorque),
  tilt: number(0, 90, {
    description: 'Largest angle by which a planet may tip over in its play',
    unit: 'deg',
    source: 'common practice, no source: half the working depth over the face width',
    defaultRule: 'atan(addendum × module / faceWidth)',
    examples: [4],
  }).optional(),
  axialPlay: number(0, 300, {
    description: 'Largest way along the axis that a part may move before its teeth hold it',
    unit: 'mm',
    source: 'common practice, no source',
    defaultRule: 'faceWidth / 4',
    examples: [5],
  }).optional(),
  overhangAngle: number(0, 90, {
    description:
      'Steepest overhang, counted from the vertical: 0 is a wall, 90 a ceiling; what the mesh tolerance explains is allowed on top, 4 at most',
    unit: 'deg',
    source: 'common practice: 45 prints without support',
  }).default(45),
  overhangArea: number(0, 1_000_000, {
    description: 'Largest area of the whole set that may overhang by more, first layer left out',
    unit: 'mm²',
    source: 'common practice, no source: small patches sag without harm',
  }).default(10),
  bridge: number(0, 200, {
    description:
      'Longest span of a flat underside between places that carry it; what lies one or two layers over another body is carried by it',
    unit: 'mm',
    source: 'common practice, no source: strands of this length hardly sag with the fan on',
  }).default(10),
  thinness: number(1, 1000, {
    description: 'Largest height of a free wall in units of its thickness',
    source: 'common practice, no source: higher ones shake under the nozzle',
  }).default(25),
});

/** Limits of a planetary set. */
export const limits = all.prefault({}).meta({ description: 'Limits that the checks hold the set against' });

/** Limits of pairs, racks and single gears, which hold no planets and bear no known load. */
export const trainLimits = all
  .omit({ pinchForce: true, sunTorque: true, tilt: true })
  .prefault({})
  .meta({ description: 'Limits that the checks hold the parts against' });

/** How far things may drop in between the planets. */
export const opening = z
  .strictObject({
    max: number(0, 1000, {
      description:
        'Largest way that a straight edge may drop in between planets, inside the ring’s tip circle',
      unit: 'mm',
      source: 'of the file: no limit is common practice',
      defaultRule: 'none: the drop is reported and nothing is refused',
      examples: [5],
    }).optional(),
    edge: number(0, 3000, {
      description: 'Length of that straight edge',
      unit: 'mm',
      source: 'of the file',
      defaultRule: 'long enough to rest on two planets',
      examples: [30],
    }).optional(),
  })
  .optional()
  .meta({ description: 'What is asked of the widest opening between planets' });
