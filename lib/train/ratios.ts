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
