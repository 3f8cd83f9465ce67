import { setOf } from '../../fit/train/setOf.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { allowsEqualSpacing, leastClearance, planetPlaces } from '../../train/assembly.js';
import { opening as openingOf } from '../../train/opening.js';
import { specShifts } from '../../train/shifts/specShifts.js';
import { mustFail } from '../check.js';
import { assembly } from '../checks/assembly.js';
import { captured } from '../checks/captured.js';
import { coaxial } from '../checks/coaxial.js';
import { fingerGaps } from '../checks/fingerGaps.js';
import { mount } from '../checks/mount.js';
import { neighbours } from '../checks/neighbours.js';
import { opening } from '../checks/opening.js';
import { pin } from '../checks/pin.js';
import { skip } from '../checks/skip.js';
import { tilt } from '../checks/tilt.js';
import { looseSetOf } from '../motion/looseSetOf.js';
import { type PlayRecord, playRecord } from '../motion/playRecord.js';
import { mountingRecord } from '../mounting.js';
import { freeWays } from '../nearest/freeWays.js';
import { helpedChecks } from '../nearest/help.js';
import { setWays, solved } from '../nearest/setChanges.js';
import { fingerGaps as gapsForFingers } from '../safety/fingerGaps.js';
import { trainRecord } from '../trainRecord.js';
import type { ProofArrangement } from './arrangement.js';

/** Centre distances that differ by less are one, mm, as the check `coaxial` has it. */
const ONE_DISTANCE = 1e-4;

/** What is asked of sun, planets and ring. */
export const planetary: ProofArrangement<PlanetarySpec> = {
  title: 'Planetary gear set',
  assembly: (found) => [coaxial(found), assembly(found), neighbours(found)],
  use: (found) => [skip(found), opening(found), ...mount(found)],
  openings: (found) => [fingerGaps(found)],
  fingerGaps: gapsForFingers,
  outlines: pin,
  playOf: (asked, trees, changed) => playRecord(asked.spec, { set: looseSetOf(asked), trees, changed }),
  play: ({ play, spec: { limits } }) => [
    captured(play as PlayRecord, limits.axialPlay),
    tilt(play as PlayRecord, limits.tilt),
  ],
  record: trainRecord,
  mounting: mountingRecord,

  assembles(train) {
    const { spec, inner, outer, radii } = setOf(train);
    const { sun, ring, planets } = spec;
    if (planets.spacing !== 'nearest' && !allowsEqualSpacing(sun.teeth, ring.teeth, planets.count))
      return false;
    if (Math.abs(inner.centreDistance - outer.centreDistance) > ONE_DISTANCE) return false;
    const places = planetPlaces(sun.teeth, ring.teeth, planets.count);
    if (!(leastClearance(places, inner.centreDistance, radii.planet.tip) >= spec.fit.gap)) return false;
    const { max, edge } = spec.opening ?? {};
    const sizes = {
      centreDistance: inner.centreDistance,
      planetTipRadius: radii.planet.tip,
      ringTipRadius: radii.ring.tip,
      sunTipRadius: radii.sun.tip,
    };
    return max === undefined || openingOf(places, sizes, edge).drop <= max;
  },
  triesRolling: false,
  ways: setWays,
  countsHang: true,
  // A resolved file does not tell whether its ring's shift was given.
  shifted: (spec, shifts) => [{ ...shifts, 'ring.profileShift': undefined }, solved(spec)],

  follows(spec, path) {
    const shifts = {
      'sun.profileShift': 'sun',
      'planets.profileShift': 'planet',
      'ring.profileShift': 'ring',
    } as const;
    return path in shifts ? specShifts(spec)[shifts[path as keyof typeof shifts]] : undefined;
  },

  /** What would let bodies turn freely that do not, tried on the whole set. */
  helpedBodies(spec, checks, isProved) {
    if (!isProved) return checks;
    const blocked = (check: (typeof checks)[number]) => check.id === 'free-to-turn' && mustFail(check);
    return helpedChecks(spec, checks, blocked, { counts: false, ways: freeWays(spec), more: isProved });
  },
};
