import * as z from 'zod';
import { degrees, follows, mm, number } from '../fields.js';
import { ranges } from '../ranges.js';
import { STURDY_WALL, sturdyWall, type ToothDepth, usual } from '../usual.js';

/** What the checks hold a set against. */
const all = z.strictObject({
  contactRatio: number(...ranges.contactRatio, {
    description: 'Total contact ratio below which a mesh is marked',
    source: `common practice: at least ${usual.contactRatio}`,
  }).default(usual.contactRatio),
  toothFeature: mm(0, 10, {
    description: 'Least tip thickness and root space',
    source: 'common practice: one line',
    ...follows('printer.lineWidth', 0.45),
  }).optional(),
  wall: mm(0, 20, {
    description: 'Least tooth thickness and wall',
    source: 'common practice: two lines',
    ...follows('2 × printer.lineWidth', 0.9),
  }).optional(),
  rim: mm(0, 100, {
    description: 'Least wall of a ring outside its root circle, or of a bar behind its roots',
    source: 'common practice: 1.2 times the tooth depth',
    ...follows(STURDY_WALL, 4),
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
  tilt: degrees(0, 90, {
    description: 'Largest angle by which a planet may tip over in its play',
    source: 'common practice, no source: half the working depth over the face width',
    ...follows('atan(addendum × module / faceWidth)', 4),
  }).optional(),
  axialPlay: mm(0, 300, {
    description: 'Largest way along the axis that a part may move before its teeth hold it',
    source: 'common practice, no source',
    ...follows('faceWidth / 4', 5),
  }).optional(),
  overhangAngle: degrees(0, 90, {
    description:
      'Steepest overhang, counted from the vertical: 0 is a wall, 90 a ceiling; what the mesh tolerance explains is allowed on top, 4 at most',
    source: 'common practice: 45 prints without support',
  }).default(45),
  overhangArea: number(0, 1_000_000, {
    description: 'Largest area of the whole set that may overhang by more, first layer left out',
    unit: 'mm²',
    source: 'common practice, no source: small patches sag without harm',
  }).default(10),
  bridge: mm(0, 200, {
    description:
      'Longest span of a flat underside between places that carry it; what lies one or two layers over another body is carried by it',
    source: 'common practice, no source: strands of this length hardly sag with the fan on',
  }).default(10),
  thinness: number(1, 1000, {
    description: 'Largest height of a free wall in units of its thickness',
    source: 'common practice, no source: higher ones shake under the nozzle',
  }).default(25),
});

/** Limits of the checks on planetary sets. */
export interface Limits extends Required<z.output<typeof all>> {}

/** Limits of the checks on every kind of file. */
export interface CommonLimits extends Omit<Limits, 'pinchForce' | 'sunTorque' | 'tilt'> {}

/** Limits of a planetary set. */
export const limits = all.prefault({}).meta({ description: 'Limits that the checks hold the set against' });

/** Limits of pairs, racks and single gears, which hold no planets and bear no known load. */
export const trainLimits = all
  .omit({ pinchForce: true, sunTorque: true, tilt: true })
  .prefault({})
  .meta({ description: 'Limits that the checks hold the parts against' });

/** What the limits' defaults follow from, lengths in mm. */
interface Limited extends ToothDepth {
  faceWidth: number;
  lineWidth: number;
}

/** The limits of files of every kind with their defaults. */
export function completeLimits(file: z.output<typeof trainLimits>, sizes: Limited): CommonLimits {
  const { lineWidth, faceWidth } = sizes;
  return {
    ...file,
    toothFeature: file.toothFeature ?? lineWidth,
    wall: file.wall ?? 2 * lineWidth,
    rim: file.rim ?? sturdyWall(sizes),
    axialPlay: file.axialPlay ?? faceWidth / 4,
  };
}

/** How far things may drop in between the planets. */
export const opening = z
  .strictObject({
    max: mm(0, 1000, {
      description:
        'Largest way that a straight edge may drop in between planets, inside the ring’s tip circle',
      source: 'of the file: no limit is common practice',
      ...follows('none: the drop is reported and nothing is refused', 5),
    }).optional(),
    edge: mm(0, 3000, {
      description: 'Length of that straight edge',
      source: 'of the file',
      ...follows('long enough to rest on two planets', 30),
    }).optional(),
  })
  .optional()
  .meta({ description: 'What is asked of the widest opening between planets' });

/** Limit on the widest opening between planets; what is missing is not asked. */
export interface OpeningAsked extends NonNullable<z.output<typeof opening>> {}
