import { barOf, gearsOf } from './kinds.js';
import type { Bore, Spec } from './types.js';

/** Walls whose thickness a file gives: rims of rings where scallops leave them thinnest, the backing of a bar; mm. */
export function wallsOf(spec: Spec): number[] {
  const rims = gearsOf(spec).flatMap((gear) => (gear.internal ? [gear.rim - (gear.grip?.depth ?? 0)] : []));
  return [...rims, ...(barOf(spec) ? [barOf(spec)!.backing] : [])];
}

/** Widths of the openings that a file gives, mm. */
export function openingsOf(spec: Spec): number[] {
  return gearsOf(spec).flatMap((gear) => {
    if (gear.internal) return diameters(gear.bolts, gear.mount);
    const { bore, screw, nut, hole, dimple, pocket } = gear;
    return [...widthOf(bore), ...diameters(screw, nut, hole, dimple, pocket)];
  });
}

function diameters(...holes: ({ diameter: number } | undefined)[]): number[] {
  return holes.flatMap((hole) => hole?.diameter ?? []);
}

/** The least width of a bore; nothing for none. */
function widthOf(bore: Bore): number[] {
  switch (bore.shape) {
    case 'none':
      return [];
    case 'round':
      return [bore.diameter];
    case 'D':
      return [bore.acrossFlat];
    case 'hexagon':
    case 'square':
      return [bore.acrossFlats];
  }
}
