import type { GearFeatures, RingFeatures } from './features/types.js';
import type { Bore, ExternalGear, PlanetarySpec, Spec } from './types.js';

/** Walls whose thickness a file gives: rims of rings where scallops leave them thinnest, the backing of a bar; mm. */
export function wallsOf(spec: Spec): number[] {
  switch (spec.kind) {
    case 'planetary':
      return [rimOf(spec.ring)];
    case 'pair':
      return spec.wheel.internal ? [rimOf(spec.wheel)] : [];
    case 'rack':
      return [spec.bar.backing];
    case 'gear':
      return spec.gear.internal ? [rimOf(spec.gear)] : [];
  }
}

/** Gaps that a file gives besides that of the teeth, mm. */
export function gapsOf(spec: Spec): number[] {
  if (spec.kind !== 'planetary') return [];
  const { carrier, lips } = spec;
  return [...(carrier === 'none' ? [] : [carrier.gap]), ...(lips ? [lips.gap] : [])];
}

function rimOf({ rim, grip }: { rim: number } & RingFeatures): number {
  return rim - (grip?.depth ?? 0);
}

/** Widths of the openings that a file gives, mm. */
export function openingsOf(spec: Spec): number[] {
  switch (spec.kind) {
    case 'planetary':
      return [...widthOf(spec.sun.bore), ...featureWidths(spec)];
    case 'pair':
      return [...openIn(spec.pinion), ...(spec.wheel.internal ? drilled(spec.wheel) : openIn(spec.wheel))];
    case 'rack':
      return openIn(spec.pinion);
    case 'gear':
      return spec.gear.internal ? drilled(spec.gear) : openIn(spec.gear);
  }
}

function featureWidths({ planets, sun, ring }: PlanetarySpec): number[] {
  const { hole, dimple, pocket } = planets;
  return [...[hole, dimple, pocket].flatMap((pit) => pit?.diameter ?? []), ...tapped(sun), ...drilled(ring)];
}

function openIn(gear: ExternalGear): number[] {
  return [...widthOf(gear.bore), ...tapped(gear)];
}

function tapped({ screw, nut }: GearFeatures): number[] {
  return [screw, nut].flatMap((hole) => hole?.diameter ?? []);
}

function drilled({ bolts, mount }: RingFeatures): number[] {
  return [bolts, mount].flatMap((hole) => hole?.diameter ?? []);
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
