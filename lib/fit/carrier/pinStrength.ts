import type { CarrierSizes } from './carrierSizes.js';
import type { Station } from './pinShape.js';

/** What a pin bears. Forces in N, torque in N m, stress in MPa. */
export interface PinStrength {
  /** Torque on the sun at which the first pin breaks. */
  breakingTorque: number;
  /** Force on each pin for one N m on the sun. */
  forcePerTorque: number;
  /** Which stress breaks it, and its height above the gears' lower end face, mm. */
  by: 'bending' | 'shear';
  at: number;
}

/** Pins stand upright, so that they bend and shear across their layers, which hold about this share. Common practice, no source. */
export const ACROSS_LAYERS = 0.5;
/** Stations looked at along a pin. */
const STATIONS = 64;

/**
 * The torque on the sun at which a pin breaks, shared equally by all planets, no friction. Sun and ring push a planet the
 * same way around, each with the torque over the sun's working pitch radius, so that a pin bears twice that; it is
 * taken as one force at mid face: on the safe side.
 * One plate holds a cantilever, M = F (distance to mid face), V = F; two plates hold a beam built in at both ends,
 * M = F L/8 at its ends and its middle, V = F/2. A round section bears M / (π d³/32) and 4 V / (3 A).
 * Source: beam and section formulas as in Roark's Formulas for Stress and Strain, tables of beams and of section
 * properties (from memory); maximum shear stress held against strength / √3 (von Mises).
 * @param load `workingRadius` of the sun's pitch circle in mesh, mm; `planets` that share; `strength` along the layers, MPa
 */
export function pinStrength(
  { pin, plates }: CarrierSizes,
  faceWidth: number,
  load: { workingRadius: number; planets: number; strength: number },
): PinStrength | null {
  if (!pin) return null;
  const forcePerTorque = 2000 / (load.planets * load.workingRadius);
  const bears = ACROSS_LAYERS * load.strength;
  const [[from], [to]] = [pin.pin[0], pin.pin[pin.pin.length - 1]];
  const middle = faceWidth / 2;
  const moment = (z: number) => {
    if (plates.length === 2)
      return ((to - from) / 8) * Math.abs(1 - (2 * Math.abs(z - middle)) / ((to - from) / 2));
    return Math.max(0, plates[0].side === 'below' ? middle - z : z - middle);
  };
  const force = (z: number) => {
    if (plates.length === 2) return 0.5;
    return (plates[0].side === 'below' ? z <= middle : z >= middle) ? 1 : 0;
  };
  let least: PinStrength | null = null;
  const note = (stress: number, limit: number, by: PinStrength['by'], at: number) => {
    const breakingTorque = limit / (stress * forcePerTorque);
    if (stress > 0 && (least === null || breakingTorque < least.breakingTorque))
      least = { breakingTorque, forcePerTorque, by, at };
  };
  for (const [z, radius] of alongPin(pin.pin)) {
    note((4 * moment(z)) / (Math.PI * radius ** 3), bears, 'bending', z);
    note((4 * force(z)) / (3 * Math.PI * radius ** 2), bears / Math.sqrt(3), 'shear', z);
  }
  return least;
}

function alongPin(stations: readonly Station[]): Station[] {
  return stations.slice(1).flatMap(([z, radius], i) => {
    const [before, start] = stations[i];
    return Array.from({ length: STATIONS + 1 }, (_, k): Station => {
      const share = k / STATIONS;
      return [before + share * (z - before), start + share * (radius - start)];
    });
  });
}
