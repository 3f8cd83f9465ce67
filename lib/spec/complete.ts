import { radians } from '../tooth/gear.js';
import { completeCarrier, completeLips } from './completeCarrier.js';
import { completeGear, completePlanet, completeRing } from './features/complete.js';
import { ROUNDING } from './nearest.js';
import { filamentProfiles } from './profiles/filaments.js';
import { standardRack } from './racks.js';
import type { FileSpec } from './schema.js';
import type { Filament, PlanetarySpec, Rack } from './types.js';

/** Rim and tooth depth go together by this factor. Common practice. */
const RIM_PER_DEPTH = 1.2;

/**
 * Fills in every default that follows from other values. Lengths in mm, angles in degrees.
 * @param file values each in its own range; `module` or `transverseModule` given
 * @param name base name where the file gives none
 */
export function complete(file: FileSpec, name: string): PlanetarySpec {
  const helix = { ...file.helix, angle: file.helix.angle ?? usualAngle[file.helix.form] };
  const module = file.module ?? normalModule(file.transverseModule!, helix.angle);
  const rack: Rack =
    typeof file.rack === 'string' ? standardRack(file.rack, radians(file.pressureAngle)) : file.rack;
  const bore = file.sun.bore === 'none' ? { shape: 'none' as const } : file.sun.bore;
  const { nozzle } = file.printer;
  const lineWidth = file.printer.lineWidth ?? 1.125 * nozzle;
  const layer = file.printer.layer ?? Math.min(0.2, nozzle / 2);
  const herringbone = helix.form === 'herringbone';
  const usualRetention = herringbone ? 'herringbone' : 'none';
  const usualWithLips = herringbone ? 'both' : 'lips';
  const retention = file.retention ?? (file.lips ? usualWithLips : usualRetention);
  const sturdyRim = RIM_PER_DEPTH * (rack.addendum + rack.dedendum) * module;
  return {
    name: file.name ?? name,
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
    profileShift: file.profileShift,
    shiftBalance: file.shiftBalance,
    sun: {
      teeth: file.sun.teeth,
      ...shiftOf(file, file.sun.profileShift, 0),
      bore,
      ...completeGear(file.sun, layer),
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
      rim: file.ring.rim ?? Math.max(3, sturdyRim),
      ...completeRing(file.ring, { faceWidth: file.faceWidth, layer, lineWidth }),
    },
    fit: { ...file.fit },
    printer: { ...file.printer, layer, lineWidth },
    filament: completeFilament(file.filament),
    ...(file.opening && { opening: file.opening }),
    carrier: completeCarrier(file, { module, rack, helixAngle: helix.angle, layer }),
    retention,
    ...((file.lips || retention === 'lips' || retention === 'both') && { lips: completeLips(file) }),
    tolerance: file.tolerance,
    limits: {
      ...file.limits,
      toothFeature: file.limits.toothFeature ?? lineWidth,
      wall: file.limits.wall ?? 2 * lineWidth,
      rim: file.limits.rim ?? sturdyRim,
      axialPlay: file.limits.axialPlay ?? file.faceWidth / 4,
      tilt: file.limits.tilt ?? (Math.atan2(rack.addendum * module, file.faceWidth) * 180) / Math.PI,
    },
  };
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

const usualAngle = { herringbone: 30, helical: 20, spur: 0 } as const;

function usualRingTeeth(file: FileSpec): number {
  return file.sun.teeth + 2 * file.planets.teeth;
}

/**
 * With z_ring = z_sun + 2 z_planet both meshes have one centre distance when x_ring = x_sun + 2 x_planet:
 * the two tooth sums are equal, and so are then the two shift sums x_sun + x_planet and x_ring − x_planet.
 */
function usualRingShift(file: FileSpec): number {
  const teeth = file.ring.teeth ?? usualRingTeeth(file);
  const [sun, planet] = [file.sun.profileShift ?? 0, file.planets.profileShift ?? 0];
  return teeth === usualRingTeeth(file) ? sun + 2 * planet : 0;
}

/** A shift that is to be found stays out of the file, so that resolving again finds the same one. */
function shiftOf(file: FileSpec, given: number | undefined, usual: number): { profileShift?: number } {
  if (given !== undefined) return { profileShift: given };
  return file.profileShift === 'solve' ? {} : { profileShift: usual };
}

/** m_n = m_t cos β; a result that misses a round figure only by the rounding of doubles is that figure. */
function normalModule(transverseModule: number, helixAngle: number): number {
  const module = transverseModule * Math.cos(radians(helixAngle));
  const round = Math.round(module * 1e6) / 1e6;
  return Math.abs(module - round) < ROUNDING ? round : module;
}
