import { type Problem, problemOf } from '../refusal.js';
import { whole } from '../spec/fields.js';
import { featureRanges as sizes } from '../spec/ranges.js';
import { column } from '../stack/column.js';
import type { Contour } from '../stack/contour.js';
import type * as stack from '../stack/stack.js';
import { type Bore, boreRadius } from './bore.js';
import { asked, type Feature, type Given, length } from './feature.js';
import type { NutPocket } from './nut.js';
import { atLeast, atMost, type Body, CORNER } from './room.js';
import type { ScrewHole } from './screw.js';
import { wavyOutline } from './wavyOutline.js';

const schema = asked(
  'Knob on the top face to turn the gear by',
  'common practice',
  {
    diameter: length(...sizes.knobDiameter, 'Diameter of the knob', 15),
    height: length(...sizes.knobHeight, 'Height of the knob above the face', 10),
    grips: whole(0, 60, {
      description: 'Hollows around the knob; 0 for a round one',
      source: 'common practice',
    }).default(8),
  },
  { diameter: 15, height: 10 },
);

/** A knob to turn a gear by, `grips` the hollows around it. */
export interface Knob extends Given<typeof schema> {}

/** A knob on the top face; what is open about the axis goes through it. */
export const knob = {
  schema,
  rules: { 3: room },
  drawn: { diameter: 'standing', height: 'length', grips: 'asked' },
  reads: { knob: (own) => own.diameter },
  stands: (own) => own.height,
  reached: true,
  widens: { key: 'height', least: sizes.knobHeight[0] },
} satisfies Feature<Knob>;

/** Hollows of a knob are this share of its radius deep. */
const FLUTE_SHARE = 0.08;
/** Edge taken off at 45°, mm, and at most this share of the height. */
const CHAMFER = 1;
const CHAMFER_SHARE = 0.25;

/** What may be open about the axis of a gear. */
export interface Opened {
  bore?: Bore;
  screw?: ScrewHole;
  nut?: NutPocket;
}

function room(own: Knob, all: Opened, { part, root, wall }: Body): Problem[] {
  const path = `${part}.knob.diameter`;
  const most = 2 * (root - wall);
  const reach = topReach(all);
  const least = reach > 0 ? (2 * (reach + wall)) / (1 - (own.grips ? FLUTE_SHARE : 0)) : 0;
  if (least > most) {
    const rule = 'finds no room: around the hole and two lines of wall it would reach over the teeth';
    return [problemOf('no-room', `${part}.knob`, own, rule, ['none'])];
  }
  return [
    ...atMost(path, own.diameter, most, 'it stands inside the root circle', sizes.knobDiameter[0]),
    ...atLeast(path, own.diameter, least, 'two lines of wall around the hole'),
  ];
}

/** Radius of what is open in the top face, mm. */
function topReach({ bore, screw, nut }: Opened): number {
  return Math.max(
    bore ? boreRadius(bore) : 0,
    screw ? (screw.countersink === 'top' ? screw.headDiameter : screw.diameter) / 2 : 0,
    nut ? (nut.at === 'top' ? nut.acrossFlats * CORNER.hexagon : nut.diameter) / 2 : 0,
  );
}

function chamferOf({ diameter, height }: Knob): number {
  return Math.min(CHAMFER, CHAMFER_SHARE * height, diameter / 16);
}

/** Radius of the largest circle in a knob's top face, inside its hollows and its edge, mm. */
export function knobFace(own: Knob): number {
  return (own.diameter / 2) * (1 - (own.grips ? FLUTE_SHARE : 0)) - chamferOf(own);
}

/**
 * A knob that stands on the top face, its upper edge taken off at 45°.
 * @param z height of the face it stands on, mm
 * @param holes that open in its own top face
 */
export function knobOn(own: Knob, z: number, holes: readonly Contour[], tolerance: number): stack.Feature {
  const { diameter, height, grips } = own;
  const chamfer = chamferOf(own);
  const outline = (inset: number) =>
    wavyOutline(diameter / 2, grips, (FLUTE_SHARE * diameter) / 2, tolerance, inset);
  const full = outline(0);
  const { first, last, walls, faces } = column(
    [
      { z, outline: full },
      { z: z + height - chamfer, outline: full },
      { z: z + height, outline: outline(chamfer) },
    ],
    'inside',
  );
  return { holes: { top: [first] }, walls, faces: [...faces, { looks: 'up', outer: last, holes }] };
}
