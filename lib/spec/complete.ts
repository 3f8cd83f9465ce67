import { radians } from '../tooth/gear.js';
import { lengthOf, teethIn } from './bar.js';
import { completeCarrier, completeLips } from './completeCarrier.js';
import {
  completeGear as completeGearFeatures,
  completePlanet,
  completeRing,
  type GearFile,
  type RingFile,
} from './features/complete.js';
import { usualNames } from './kinds.js';
import { coarsestTolerance } from './measuredGaps.js';
import { ROUNDING } from './nearest.js';
import { filamentProfiles } from './profiles/filaments.js';
import { standardRack } from './racks.js';
import { ranges } from './ranges.js';
import type { FileOf, FileSpec } from './schema.js';
import type {
  Bore,
  Filament,
  GearSpec,
  PairSpec,
  PlanetarySpec,
  Printer,
  Rack,
  RackSpec,
  Spec,
} from './types.js';
import { LINE_PER_NOZZLE, sturdyWall, usual, usualWall } from './usual.js';

/** Largest distance of a mesh from the exact surface, mm. Common practice: far below what a printer resolves. */
const USUAL_TOLERANCE = 0.01;

/**
 * Fills in every default that follows from other values. Lengths in mm, angles in degrees.
 * @param file values each in its own range; `module` or `transverseModule` given
 * @param name base name where the file gives none [one after the kind]
 */
export function complete(file: FileSpec, name: string): Spec {
  const spec = completed(file, name);
  return file.tolerance === undefined
    ? { ...spec, tolerance: coarsestTolerance(spec, USUAL_TOLERANCE) }
    : spec;
}

function completed(file: FileSpec, name: string): Spec {
  switch (file.kind) {
    case 'planetary':
      return completePlanetary(file, name);
    case 'pair':
      return completePair(file, name);
    case 'rack':
      return completeRack(file, name);
    case 'gear':
      return completeGear(file, name);
  }
}

/**
 * Lips lie over bevels this many times as deep as others: so deep that play, which lets planets drop away from the ring, does
 * not let them past. Common practice, no source.
 */
export const BEVEL_FOR_LIPS = 1.4;

/** `complete` for a planetary set. */
export function completePlanetary(file: FileOf<'planetary'>, name: string): PlanetarySpec {
  const [teeth, rest] = completeCommon(file, name);
  const { module, rack, helix } = teeth;
  const { layer } = rest.printer;
  const herringbone = helix.form === 'herringbone';
  const usualRetention = herringbone ? 'herringbone' : 'none';
  const usualWithLips = herringbone ? 'both' : 'lips';
  const retention = file.retention ?? (file.lips ? usualWithLips : usualRetention);
  const lipped = file.lips !== undefined || retention === 'lips' || retention === 'both';
  const deepest = BEVEL_FOR_LIPS * rack.addendum * module + file.fit.gap;
  const bevelSize = lipped ? (file.bevel.size ?? Math.min(deepest, file.faceWidth / 5)) : teeth.bevel.size;
  return {
    ...teeth,
    bevel: { ...teeth.bevel, size: bevelSize },
    kind: file.kind,
    profileShift: file.profileShift,
    shiftBalance: file.shiftBalance,
    sun: {
      teeth: file.sun.teeth,
      ...shiftOf(file, file.sun.profileShift, 0),
      bore: boreOf(file.sun),
      ...completeGearFeatures(file.sun, layer),
    },
    planets: {
      teeth: file.planets.teeth,
      count: file.planets.count,
      spacing: file.planets.spacing,
      ...shiftOf(file, file.planets.profileShift, 0),
      ...completePlanet(file.planets, layer),
    },
    ring: {
      teeth: file.ring.teeth ?? usualRingTeeth(file),
      ...shiftOf(file, file.ring.profileShift, usualRingShift(file)),
      rim: file.ring.rim ?? usualWall(teeth),
      ...completeRing(file.ring, { faceWidth: file.faceWidth, layer, lineWidth: rest.printer.lineWidth }),
    },
    fit: rest.fit,
    printer: rest.printer,
    filament: rest.filament,
    ...(file.opening && { opening: file.opening }),
    carrier: completeCarrier(file, { module, rack, helixAngle: helix.angle, layer }),
    retention,
    ...(lipped && { lips: completeLips(file) }),
    tolerance: rest.tolerance,
    limits: {
      ...file.limits,
      ...rest.limits,
      tilt:
        file.limits.tilt ?? (Math.atan2(teeth.rack.addendum * teeth.module, file.faceWidth) * 180) / Math.PI,
    },
  };
}

function completePair(file: FileOf<'pair'>, name: string): PairSpec {
  const [teeth, rest] = completeCommon(file, name);
  const { pinion, wheel, centreDistance } = file;
  const open = pinion.profileShift === undefined || wheel.profileShift === undefined;
  const profileShift = file.profileShift ?? (centreDistance !== undefined && open ? 'solve' : 'none');
  const shift = (given: number | undefined) => shiftOf({ profileShift }, given, 0);
  const { outside, inside } = bodiesOf(teeth, rest.printer);
  return {
    ...teeth,
    kind: file.kind,
    profileShift,
    shiftBalance: file.shiftBalance,
    ...(centreDistance !== undefined && { centreDistance }),
    pinion: { teeth: pinion.teeth, ...shift(pinion.profileShift), ...outside(pinion) },
    wheel: wheel.internal
      ? { internal: true, teeth: wheel.teeth, ...shift(wheel.profileShift), ...inside(wheel) }
      : { internal: false, teeth: wheel.teeth, ...shift(wheel.profileShift), ...outside(wheel) },
    ...rest,
  };
}

function completeRack(file: FileOf<'rack'>, name: string): RackSpec {
  const [teeth, rest] = completeCommon(file, name);
  const { pinion, bar } = file;
  const sizes = { module: teeth.module, helix: teeth.helix, faceWidth: file.faceWidth };
  const count = bar.teeth ?? (bar.length === undefined ? pinion.teeth : teethIn(bar.length, sizes));
  return {
    ...teeth,
    kind: file.kind,
    pinion: {
      teeth: pinion.teeth,
      profileShift: pinion.profileShift ?? 0,
      ...bodiesOf(teeth, rest.printer).outside(pinion),
    },
    bar: {
      teeth: count,
      length: bar.length ?? lengthOf(count, sizes),
      backing: bar.backing ?? usualWall(teeth),
    },
    ...rest,
  };
}

function completeGear(file: FileOf<'gear'>, name: string): GearSpec {
  const [teeth, rest] = completeCommon(file, name);
  const { gear } = file;
  const { teeth: count, profileShift = 0 } = gear;
  const { outside, inside } = bodiesOf(teeth, rest.printer);
  return {
    ...teeth,
    kind: file.kind,
    gear: gear.internal
      ? {
          internal: true,
          teeth: count,
          profileShift,
          ...inside(gear),
          mateTeeth: gear.mateTeeth ?? Math.max(ranges.teeth[0], Math.round(count / 3)),
        }
      : { internal: false, teeth: count, profileShift, ...outside(gear) },
    ...rest,
  };
}

/** What the gears of a file have besides their teeth, for teeth outside and inside. */
function bodiesOf(teeth: { rack: Rack; module: number; faceWidth: number }, printer: Printer) {
  const { layer, lineWidth } = printer;
  const { faceWidth } = teeth;
  return {
    outside: (gear: { bore: 'none' | Bore } & GearFile) => ({
      bore: boreOf(gear),
      ...completeGearFeatures(gear, layer),
    }),
    inside: (gear: { rim?: number } & RingFile) => ({
      rim: gear.rim ?? usualWall(teeth),
      ...completeRing(gear, { faceWidth, layer, lineWidth }),
    }),
  };
}

/** What files of every kind hold: the form of the teeth, and the rest in the order in which it is written down. */
function completeCommon(file: FileSpec, name: string) {
  const helix = { ...file.helix, angle: file.helix.angle ?? usual.helixAngle[file.helix.form] };
  const module = file.module ?? normalModule(file.transverseModule!, helix.angle);
  const rack: Rack =
    typeof file.rack === 'string' ? standardRack(file.rack, radians(file.pressureAngle)) : file.rack;
  const { nozzle } = file.printer;
  const lineWidth = file.printer.lineWidth ?? LINE_PER_NOZZLE * nozzle;
  const teeth = {
    name: file.name ?? (name || usualNames[file.kind]),
    kind: file.kind,
    module,
    pressureAngle: file.pressureAngle,
    rack,
    helix,
    faceWidth: file.faceWidth,
    bevel: {
      angle: file.bevel.angle,
      size: file.bevel.size ?? Math.min(rack.addendum * module + file.fit.gap, file.faceWidth / 5),
    },
  };
  const rest = {
    fit: { ...file.fit },
    printer: { ...file.printer, layer: file.printer.layer ?? Math.min(0.2, nozzle / 2), lineWidth },
    filament: completeFilament(file.filament),
    tolerance: file.tolerance ?? USUAL_TOLERANCE,
    limits: {
      ...file.limits,
      toothFeature: file.limits.toothFeature ?? lineWidth,
      wall: file.limits.wall ?? 2 * lineWidth,
      rim: file.limits.rim ?? sturdyWall(teeth),
      axialPlay: file.limits.axialPlay ?? file.faceWidth / 4,
    },
  };
  return [teeth, rest] as const;
}

function boreOf({ bore }: { bore: 'none' | Bore }): Bore {
  return bore === 'none' ? { shape: 'none' } : bore;
}

function completeFilament(file: FileSpec['filament']): Filament {
  const { modulus, strength, glassTransition, dryingTemperature } = filamentProfiles[file.material];
  return {
    material: file.material,
    shrinkage: file.shrinkage,
    modulus: file.modulus ?? modulus,
    strength: file.strength ?? strength,
    poisson: file.poisson,
    glassTransition: file.glassTransition ?? glassTransition,
    dryingTemperature: file.dryingTemperature ?? dryingTemperature,
  };
}

function usualRingTeeth(file: FileOf<'planetary'>): number {
  return file.sun.teeth + 2 * file.planets.teeth;
}

/**
 * With z_ring = z_sun + 2 z_planet both meshes have one centre distance when x_ring = x_sun + 2 x_planet:
 * the two tooth sums are equal, and so are then the two shift sums x_sun + x_planet and x_ring − x_planet.
 */
function usualRingShift(file: FileOf<'planetary'>): number {
  const teeth = file.ring.teeth ?? usualRingTeeth(file);
  const [sun, planet] = [file.sun.profileShift ?? 0, file.planets.profileShift ?? 0];
  return teeth === usualRingTeeth(file) ? sun + 2 * planet : 0;
}

/** A shift that is to be found stays out of the file, so that resolving again finds the same one. */
function shiftOf(
  file: { profileShift: 'none' | 'solve' },
  given: number | undefined,
  usual: number,
): { profileShift?: number } {
  if (given !== undefined) return { profileShift: given };
  return file.profileShift === 'solve' ? {} : { profileShift: usual };
}

/** m_n = m_t cos β; a result that misses a round figure only by the rounding of doubles is that figure. */
function normalModule(transverseModule: number, helixAngle: number): number {
  const module = transverseModule * Math.cos(radians(helixAngle));
  const round = Math.round(module * 1e6) / 1e6;
  return Math.abs(module - round) < ROUNDING ? round : module;
}
