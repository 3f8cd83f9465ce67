import { type Gear, gearSizes } from '../tooth/gear.js';

/** How a pinion and a bar run together, transverse section. Lengths in mm. */
export interface RackMesh {
  /** Distance of the pinion's axis from the datum line of the bar: r + x m_n. */
  centreDistance: number;
  /** Where contact begins, at the bar's tips, and ends, at the pinion's: tangent lengths on the pinion. */
  start: number;
  end: number;
  transverseContactRatio: number;
}

/**
 * The path of contact of a pinion and a bar. The bar's flank is straight, so the line of action stands square to it
 * and crosses the pinion's reference circle, which is its working pitch circle whatever its shift: a point of the bar
 * at height h above the pitch line meets the pinion at the tangent length r sin α_t − h / sin α_t.
 * @param tipRadius of the pinion as made
 * @param barTip height of the bar's tips above its datum line
 * @param formRadius where the pinion's true involute begins [its base circle]
 * @param barForm height down to which the bar's flank is straight [as deep as needed]
 * Source: ISO 21771, ε_α = g_α / p_bt; handbook formula for a rack,
 * [√(r_a² − r_b²) + (h_a* − x) m / sin α_t − r sin α_t] / p_bt.
 */
export function rackMesh(
  pinion: Gear,
  tipRadius: number,
  barTip: number,
  formRadius = 0,
  barForm = Number.NEGATIVE_INFINITY,
): RackMesh {
  const { referenceRadius, baseRadius, transversePressureAngle } = gearSizes(pinion);
  const shift = pinion.profileShift * pinion.module;
  const sin = Math.sin(transversePressureAngle);
  const meets = (height: number) => referenceRadius * sin - (height - shift) / sin;
  const reach = (radius: number) => Math.sqrt(Math.max(0, radius ** 2 - baseRadius ** 2));
  const start = Math.max(meets(barTip), reach(formRadius));
  const end = Math.min(reach(tipRadius), meets(barForm));
  const basePitch = (2 * Math.PI * baseRadius) / pinion.teeth;
  return {
    centreDistance: referenceRadius + shift,
    start,
    end,
    transverseContactRatio: Math.max(0, end - start) / basePitch,
  };
}
