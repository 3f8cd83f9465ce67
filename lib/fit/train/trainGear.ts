import { onlyFeatures } from '../../features/through.js';
import type { CommonSpec, ExternalGear, InternalGear, PlanetarySpec } from '../../spec/types.js';
import type { Gear } from '../../tooth/gear.js';
import type { MadeRadii } from '../madeRadii.js';
import { type GapShare, reliefOf, type TrainGear } from './train.js';

/** A gear by its teeth, before anything is known of its body. */
interface Toothed extends Pick<TrainGear, 'part' | 'way' | 'hand'> {
  gear: Gear;
  radii: MadeRadii;
  share: GapShare;
}

const NO_BORE = { shape: 'none' } as const;

/** A gear with teeth outside, on its own axis. */
export function outside({ fit }: CommonSpec, asked: ExternalGear, toothed: Toothed): TrainGear {
  return {
    ...toothed,
    ...single(toothed.part),
    relief: reliefOf(fit, toothed.share),
    bore: asked.bore,
    rim: 0,
    features: onlyFeatures(asked),
  };
}

/** A gear with teeth inside. */
export function inside({ fit }: CommonSpec, asked: InternalGear, toothed: Toothed): TrainGear {
  return {
    ...toothed,
    ...single(toothed.part),
    relief: reliefOf(fit, toothed.share),
    bore: NO_BORE,
    rim: asked.rim,
    features: onlyFeatures(asked),
  };
}

/** All planets of a set. */
export function planets({ fit, planets: asked }: PlanetarySpec, toothed: Toothed): TrainGear {
  return {
    ...toothed,
    key: 'planets',
    count: asked.count,
    orbits: true,
    relief: reliefOf(fit, toothed.share),
    bore: NO_BORE,
    rim: 0,
    features: onlyFeatures(asked),
  };
}

/** The teeth that a file gives a gear. */
export function gearOf(
  { module, pressureAngle, rack, helix }: CommonSpec,
  { teeth, profileShift = 0 }: { teeth: number; profileShift?: number },
  internal: boolean,
): Gear {
  return { teeth, module, pressureAngle, helixAngle: helix.angle, rack, profileShift, internal };
}

/** The hand of a gear that runs with teeth outside of another. */
export function opposite(hand: 'right' | 'left'): 'right' | 'left' {
  return hand === 'right' ? 'left' : 'right';
}

function single(part: string) {
  return { key: part, count: 1, orbits: false };
}
