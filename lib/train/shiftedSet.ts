import type { Frame } from './shifts/frame.js';
import { tipOf } from './shifts/limits.js';
import { contactOf, type Trial } from './shifts/trial.js';
import type { PlannedSet } from './unshiftedSet.js';

/** What a plan has to know of a set with profile shifts; lengths in normal modules, the gap of the frame taken off. */
export function shiftedSet(frame: Frame, trial: Trial): PlannedSet {
  const contact = contactOf(frame, trial);
  const { sun, planet, ring } = trial;
  const thinnest = Math.min(
    tipOf(frame, 'sun', sun, trial.sunTip),
    tipOf(frame, 'planet', planet, trial.planetTip),
  );
  return {
    sunTeeth: frame.sun.teeth,
    planetTeeth: frame.planet.teeth,
    ringTeeth: frame.ring.teeth,
    shifts: { sun, planet, ring },
    centreDistance: trial.at.centreDistance,
    sunTipRadius: trial.sunTip,
    planetTipRadius: trial.planetTip,
    ringTipRadius: trial.ringTip,
    engagement: Math.min(contact.inner, contact.outer),
    ringRootAsMade: () => trial.ringRoot,
    tipAsMade: () => thinnest,
  };
}
