import * as z from 'zod';
import { type PlanetFeatures, planetFeatures, ringFeatures, schemas } from '../../features/index.js';
import { completed } from '../../features/through.js';
import { BEVEL_FOR_LIPS } from '../bevelLimits.js';
import { follows, number, whole, word } from '../fields.js';
import { ranges } from '../ranges.js';
import {
  type Carrier,
  carrier,
  completeCarrier,
  completeLips,
  type Lips,
  lips,
  retention,
} from '../schema/carrier.js';
import { type CommonSpec, completeCommon } from '../schema/common.js';
import {
  completeExternal,
  completeInternal,
  type ExternalGear,
  external,
  type InternalGear,
  partSizes,
  rim,
  shift,
  shiftOf,
  teeth,
} from '../schema/gears.js';
import { type Limits, limits, type OpeningAsked, opening } from '../schema/limits.js';
import { type FileIn, type FileKind, schemaOf } from './kind.js';

const sun = z
  .strictObject(external('the sun'))
  .meta({ description: 'The gear in the middle', examples: [{ teeth: 15 }] });

/** The gears between sun and ring. */
const planets = z
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
    ...schemas(planetFeatures),
  })
  .meta({ description: 'The gears between sun and ring', examples: [{ teeth: 15, count: 3 }] });

/** The outer gear. */
const ring = z
  .strictObject({
    teeth: whole(...ranges.ringTeeth, {
      description: 'Number of teeth of the ring, more than a planet has',
      source: 'one centre distance for both meshes, ISO 21771',
      ...follows('sun.teeth + 2 × planets.teeth', 45),
    }).optional(),
    profileShift: number(...ranges.ringShift, {
      description:
        'Profile shift coefficient x of the ring, in normal modules; positive moves its teeth outward',
      source: 'one centre distance for both meshes, ISO 21771',
      ...follows(
        'sun.profileShift + 2 × planets.profileShift where ring.teeth is sun.teeth + 2 × planets.teeth, else 0; found where profileShift is solve',
        0,
      ),
    }).optional(),
    rim: rim('the ring'),
    ...schemas(ringFeatures),
  })
  .prefault({})
  .meta({ description: 'The outer gear' });

const schema = schemaOf('planetary', 'Planetary set', 'A planetary set: sun, planets and ring', {
  profileShift: word(['none', 'solve'], {
    description:
      'none: the shifts are those given for each gear. solve: shifts that are not given are found, so that both meshes have one centre distance (ring.teeth need not be sun + 2 × planets) and no tooth is undercut',
    source: 'ISO 21771; the search is our own',
  }).default('none'),
  shiftBalance: word(['sliding', 'root', 'none'], {
    description:
      'How sun and planets share the shift that is found: equal largest specific sliding, equal tooth thickness where the involute begins, or none of it for the planets, each as far as the limits of the teeth allow',
    source: 'ISO 21771 for sliding and thickness; common practice',
  }).default('sliding'),
  sun,
  planets,
  ring,
  opening,
  carrier,
  retention,
  lips,
  limits,
});

type File = FileIn<typeof schema>;

/** Sun, planets and ring. */
export interface PlanetarySpec
  extends CommonSpec,
    Required<Pick<File, 'kind' | 'profileShift' | 'shiftBalance' | 'retention'>> {
  sun: ExternalGear;
  planets: Pick<File['planets'], 'teeth' | 'count' | 'spacing' | 'profileShift'> & PlanetFeatures;
  ring: InternalGear;
  opening?: OpeningAsked;
  carrier: 'none' | Carrier;
  /** Only where `retention` is lips or both. */
  lips?: Lips;
  limits: Limits;
}

/** Sun, planets and ring. */
export const planetary = {
  key: 'planets',
  usualName: 'planetary-set',
  schema,
  complete,
  gears: ({ sun, planets, ring }) => [
    { part: 'sun', internal: false, ...sun },
    { part: 'planets', internal: false, bore: { shape: 'none' }, ...planets },
    { part: 'ring', internal: true, ...ring },
  ],
  gaps: ({ fit, lips, carrier, printer }) => [
    { what: 'fit.gap', gap: fit.gap },
    ...(lips ? [{ what: 'lips.gap', gap: lips.gap }] : []),
    ...(carrier === 'none'
      ? []
      : [
          { what: 'carrier.gap', gap: carrier.gap },
          { what: 'carrier.axialGap', gap: carrier.axialGap * printer.layer, axial: true as const },
        ]),
  ],
} satisfies FileKind<PlanetarySpec, File>;

function complete(file: File, name: string): PlanetarySpec {
  const [teeth, rest] = completeCommon(file, name);
  const { module, rack, bevel } = teeth;
  const { fit, printer, filament, tolerance } = rest;
  const { profileShift, shiftBalance, sun, planets, ring, faceWidth } = file;
  const retention = file.retention ?? usualRetention(file);
  const lipped = file.lips !== undefined || retention === 'lips' || retention === 'both';
  const deepest = BEVEL_FOR_LIPS * rack.addendum * module + fit.gap;
  const size = lipped ? (file.bevel.size ?? Math.min(deepest, faceWidth / 5)) : bevel.size;
  const shift = (given: number | undefined, usual = 0) => shiftOf(profileShift, given, usual);
  const ringed = { ...ring, teeth: ring.teeth ?? usualRingTeeth(file) };
  return {
    ...teeth,
    bevel: { ...bevel, size },
    profileShift,
    shiftBalance,
    sun: completeExternal(sun, shift(sun.profileShift), { faceWidth, printer }),
    planets: {
      teeth: planets.teeth,
      count: planets.count,
      spacing: planets.spacing,
      ...shift(planets.profileShift),
      ...completed(planetFeatures, planets, partSizes({ faceWidth, printer })),
    },
    ring: completeInternal(ringed, shift(ring.profileShift, usualRingShift(file)), { ...teeth, printer }),
    fit,
    printer,
    filament,
    ...(file.opening && { opening: file.opening }),
    carrier: completeCarrier(file.carrier, { ...teeth, fit, printer, planets }),
    retention,
    ...(lipped && { lips: completeLips(file.lips, fit, printer) }),
    tolerance,
    limits: {
      ...file.limits,
      ...rest.limits,
      tilt: file.limits.tilt ?? (Math.atan2(rack.addendum * module, faceWidth) * 180) / Math.PI,
    },
  };
}

function usualRetention({ helix, lips }: File): PlanetarySpec['retention'] {
  if (helix.form === 'herringbone') return lips ? 'both' : 'herringbone';
  return lips ? 'lips' : 'none';
}

function usualRingTeeth({ sun, planets }: File): number {
  return sun.teeth + 2 * planets.teeth;
}

/**
 * With z_ring = z_sun + 2 z_planet both meshes have one centre distance when x_ring = x_sun + 2 x_planet:
 * the two tooth sums are equal, and so are then the two shift sums x_sun + x_planet and x_ring − x_planet.
 */
function usualRingShift(file: File): number {
  const { sun, planets, ring } = file;
  if ((ring.teeth ?? usualRingTeeth(file)) !== usualRingTeeth(file)) return 0;
  return (sun.profileShift ?? 0) + 2 * (planets.profileShift ?? 0);
}
