import { refuse } from '../spec/refusal.js';

/**
 * Turns of the input for one turn of the output of a simple planetary set; negative when they turn against
 * each other.
 * @returns `ringHeld`: sun in, carrier out; `carrierHeld`: sun in, ring out; `sunHeld`: ring in, carrier out
 * Source: Willis equation z_s n_s + z_r n_r = (z_s + z_r) n_c.
 */
export function ratios(
  sunTeeth: number,
  ringTeeth: number,
): { ringHeld: number; carrierHeld: number; sunHeld: number } {
  return {
    ringHeld: 1 + ringTeeth / sunTeeth,
    carrierHeld: -ringTeeth / sunTeeth,
    sunHeld: 1 + sunTeeth / ringTeeth,
  };
}

/** Speeds in any one unit, positive counter-clockwise, all seen from the frame. */
export interface Speeds {
  sun: number;
  carrier: number;
  ring: number;
  /** Of a planet about its own axis, seen from the frame. */
  planet: number;
}

/**
 * All speeds of a simple planetary set from two of them.
 * @param known exactly two of sun, carrier and ring; a held member has speed 0
 * @throws Refusal when not exactly two are known
 * Source: Willis equation, and (n_p − n_c)/(n_s − n_c) = −z_s/z_p.
 */
export function speeds(
  teeth: { sunTeeth: number; planetTeeth: number; ringTeeth: number },
  known: { sun?: number; carrier?: number; ring?: number },
): Speeds {
  const { sunTeeth, planetTeeth, ringTeeth } = teeth;
  const given = Object.values(known).filter((speed) => speed !== undefined);
  if (given.length !== 2 || !given.every(Number.isFinite))
    refuse('wrong-count', 'known', known, 'exactly two of sun, carrier and ring must have a speed');
  const total = sunTeeth + ringTeeth;
  const carrier = known.carrier ?? (sunTeeth * known.sun! + ringTeeth * known.ring!) / total;
  const sun = known.sun ?? (total * carrier - ringTeeth * known.ring!) / sunTeeth;
  const ring = known.ring ?? (total * carrier - sunTeeth * sun) / ringTeeth;
  return { sun, carrier, ring, planet: carrier - ((sun - carrier) * sunTeeth) / planetTeeth };
}
