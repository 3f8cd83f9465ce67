import { distanceAt } from './shifts/distance.js';
import type { Frame } from './shifts/frame.js';
import { roomsOf, type Wanted } from './shifts/limits.js';
import { trialOf } from './shifts/trial.js';
import { type PlannedSet, type ToothForm, unshiftedSets } from './unshiftedSet.js';

/** Unshifted teeth of a ring of z_sun + 2 z_planet, beside the shifted ones that could take their place. */
export type PlainTwin = 'runs' | 'undercut' | 'refused' | { mayRun: PlannedSet };

/** Room that tells what runs from what the rounding of doubles decides. */
const CLEAR = 1e-6;

/**
 * Whether sets without shift run, as far as bare numbers tell: shifts are looked for only where they do not, or where
 * their teeth are undercut. `mayRun` is for the checks of `make` to decide.
 * @param engagement least transverse contact ratio
 */
export function plainTwins(form: ToothForm, engagement: number): (frame: Frame) => PlainTwin {
  const setOf = unshiftedSets(form);
  const wanted: Wanted = {
    tipThickness: 0,
    toothThickness: Number.NEGATIVE_INFINITY,
    contactRatio: Math.max(1, engagement),
  };
  return (frame) => {
    const { sun, planet, unshifted } = frame;
    if (sun.leastShift > 0 || planet.leastShift > 0) return 'undercut';
    const trial = trialOf(frame, distanceAt(frame, unshifted.inner), 0);
    const given = { sun: 0, planet: 0, ring: 0 };
    if (Math.min(...roomsOf(frame, trial, wanted, { given })) > CLEAR) return 'runs';
    const set = setOf(sun.teeth, planet.teeth);
    const runs = set.tipThickness > 0 && set.trochoidMargin >= 0 && set.engagement >= engagement;
    return runs ? { mayRun: set } : 'refused';
  };
}
