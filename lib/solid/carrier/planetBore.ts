import type { CarrierSizes } from '../../fit/carrier/carrierSizes.js';
import type { Wall } from '../blank.js';
import { revolved } from './columns.js';

/** The bore of a planet around its pin; a solid planet where there is none. */
export function planetBore(sizes: CarrierSizes | null, tolerance: number): Wall {
  if (!sizes?.pin) return { bore: [] };
  const contours = revolved(sizes.pin.bore, [0, 0], tolerance);
  return {
    feature: {
      holes: { bottom: [contours[0]], top: [contours[contours.length - 1]] },
      walls: contours.slice(1).map((to, i) => ({ from: contours[i], to, solid: 'outside' as const })),
      faces: [],
    },
  };
}
