import type { Bore, PlanetarySpec, Spec } from './types.js';

/** Walls whose thickness a file gives: rims of rings where scallops leave them thinnest, the backing of a bar; mm. */
export function wallsOf(spec: Spec): number[] {
  switch (spec.kind) {
    case 'planetary':
      return [spec.ring.rim - (spec.ring.grip?.depth ?? 0)];
    case 'pair':
      return spec.wheel.internal ? [spec.wheel.rim] : [];
    case 'rack':
      return [spec.bar.backing];
    case 'gear':
      return spec.gear.internal ? [spec.gear.rim] : [];
  }
}

/** Widths of the openings that a file gives, mm. */
export function openingsOf(spec: Spec): number[] {
  switch (spec.kind) {
    case 'planetary':
      return [...widthOf(spec.sun.bore), ...featureWidths(spec)];
    case 'pair':
      return [...widthOf(spec.pinion.bore), ...(spec.wheel.internal ? [] : widthOf(spec.wheel.bore))];
    case 'rack':
      return widthOf(spec.pinion.bore);
    case 'gear':
      return spec.gear.internal ? [] : widthOf(spec.gear.bore);
  }
}

function featureWidths({ sun, planets, ring }: PlanetarySpec): number[] {
  return [planets.hole, planets.dimple, planets.pocket, sun.screw, sun.nut, ring.bolts, ring.mount].flatMap(
    (hole) => hole?.diameter ?? [],
  );
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
