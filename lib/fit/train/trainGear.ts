import { onlyFeatures } from '../../features/through.js';
import type { Bore, CommonSpec } from '../../spec/types.js';
import type { Gear } from '../../tooth/gear.js';
import type { MadeRadii } from '../madeRadii.js';
import { type GapShare, reliefOf, type TrainGear } from './train.js';

/** A gear by its teeth, before anything is known of its body. */
interface Toothed extends Pick<TrainGear, 'part' | 'way' | 'hand'> {
  gear: Gear;
  radii: MadeRadii;
  share: GapShare;
}

/**
 * A gear of a file with its body; one that is not said to be a planet stands on its own axis.
 * @param asked what the file says of it
 * @param own key in the file, and how many [its part, one]
 */
export function trainGear(
  { fit }: CommonSpec,
  asked: { teeth?: number; bore?: Bore; rim?: number },
  toothed: Toothed,
  own: Pick<TrainGear, 'key' | 'count' | 'orbits'> = { key: toothed.part, count: 1, orbits: false },
): TrainGear {
  return {
    ...toothed,
    ...own,
    relief: reliefOf(fit, toothed.share),
    bore: asked.bore ?? { shape: 'none' },
    rim: asked.rim ?? 0,
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
