import type { Problem } from '../refusal.js';
import { word } from '../spec/fields.js';
import { featureRanges as sizes } from '../spec/ranges.js';
import type { Level } from '../stack/column.js';
import { chordsOf, circlePoints } from '../stack/contour.js';
import { asked, type Feature, type Given, length, type PartSizes, rounded } from './feature.js';
import { type Grip, gripOutline, leftOf } from './grip.js';
import { headHeight, type Mount, type MountFile, mount, widestOf } from './mount.js';
import { atLeast, atMost, type Body, FLOOR_LAYERS } from './room.js';

const schema = asked(
  'Flange around one end of the ring',
  'common practice; above, its underside is a cone at 45°',
  {
    diameter: length(...sizes.flangeDiameter, 'Diameter of the flange', 110),
    thickness: length(...sizes.flangeThickness, 'Thickness of the flange', 4),
    at: word(['bottom', 'top'], {
      description: 'End of the ring that has it, as printed',
      source: 'common practice',
    }).default('bottom'),
  },
  { diameter: 110, thickness: 4 },
);

/** A flange around one end of a ring. */
export interface Flange extends Given<typeof schema> {}

/** A flange; a panel mount brings one with it. */
export const flange = {
  schema,
  usual: ({ mount: given }: { mount?: 'none' | MountFile }, made): Flange | undefined =>
    given && given !== 'none' ? usualFlange(mount.complete(given, made), made) : undefined,
  rules: { 3: room },
  drawn: { diameter: 'standing', thickness: 'length' },
  reads: { flange: (own) => own.diameter },
  widens: { key: 'diameter', least: sizes.flangeDiameter[0] },
} satisfies Feature<Flange>;

/** Flange beyond the heads of its screws, mm. Common practice, no source. */
const BESIDE_HEADS = 2;
const USUAL_THICKNESS = 4;
const LEAST_THICKNESS = sizes.flangeThickness[0];

/** Wide enough for heads and nuts; as thick as usual, or as thin as the heads allow where the ring is low. */
function usualFlange(own: Mount, { faceWidth, layer, lineWidth }: PartSizes): Flange {
  const least = headHeight(own) + FLOOR_LAYERS * layer;
  const usual = Math.max(USUAL_THICKNESS, Math.ceil(least));
  return {
    diameter: Math.ceil(own.circle + widestOf(own) + 2 * Math.max(BESIDE_HEADS, 2 * lineWidth)),
    thickness: usual <= faceWidth / 2 ? usual : rounded(least),
    at: 'bottom',
  };
}

/** A flange is wider than the ring and the heads in it; it and the cone under an upper one leave some of the wall. */
function room(own: Flange, all: { grip?: Grip; mount?: Mount }, body: Body): Problem[] {
  const { diameter, thickness, at } = own;
  const { part, root, rim, wall, floor, faceWidth } = body;
  const path = (key: string) => `${part}.flange.${key}`;
  const outer = root + rim;
  const waist = leftOf(outer, all);
  const least = all.mount ? all.mount.circle + widestOf(all.mount) + 2 * wall : 2 * (outer + wall);
  const around = all.mount ? 'two lines of wall around heads and nuts' : 'two lines wider than the ring';
  const narrow = atLeast(path('diameter'), diameter, least, around);
  if (narrow.length) return narrow;
  const left = faceWidth - wall - (at === 'top' ? diameter / 2 - waist : 0);
  if (left < LEAST_THICKNESS) {
    const most = 2 * (waist + faceWidth - wall - LEAST_THICKNESS);
    const wide = atMost(path('diameter'), diameter, most, 'the cone under it must fit the face width', least);
    if (wide.length) return wide;
  }
  const most = Math.max(left, LEAST_THICKNESS);
  const thick = atMost(path('thickness'), thickness, most, 'the rest of the face width', LEAST_THICKNESS);
  if (thick.length || !all.mount) return thick;
  return atLeast(path('thickness'), thickness, headHeight(all.mount) + floor, 'the heads and four layers');
}

/** The outer wall of a ring, its flange among it. @param radius of the ring without scallops, mm */
export function outerLevels(
  ring: { grip?: Grip; flange?: Flange },
  radius: number,
  top: number,
  tolerance: number,
): Level[] {
  const { grip, flange: own } = ring;
  const rim = gripOutline(radius, ring, tolerance);
  if (!own) return [0, top].map((z) => ({ z, outline: rim }));
  // Wall to wall with equally many points, so that the cone under a flange leans evenly.
  const count = grip ? rim.length : Math.max(chordsOf(own.diameter / 2, tolerance), rim.length);
  const edge = circlePoints(own.diameter / 2, tolerance, [0, 0], count);
  const body = gripOutline(radius, ring, tolerance, count);
  if (own.at === 'bottom')
    return [
      { z: 0, outline: edge },
      { z: own.thickness, outline: edge },
      { z: own.thickness, outline: body },
      { z: top, outline: body },
    ];
  const cone = own.diameter / 2 - leftOf(radius, ring);
  return [
    { z: 0, outline: body },
    { z: top - own.thickness - cone, outline: body },
    { z: top - own.thickness, outline: edge },
    { z: top, outline: edge },
  ];
}
