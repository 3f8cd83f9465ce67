import type { PlanetarySpec } from '../../spec/types.js';
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
import { fingerGaps as gapsForFingers } from '../safety/fingerGaps.js';
import { trainRecord } from '../trainRecord.js';
import type { ProofArrangement } from './arrangement.js';

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

  /** What would let bodies turn freely that do not, tried on the whole set. */
  helpedBodies(spec, checks, isProved) {
    if (!isProved) return checks;
    const blocked = (check: (typeof checks)[number]) => check.id === 'free-to-turn' && mustFail(check);
    return helpedChecks(spec, checks, blocked, { counts: false, ways: freeWays(spec), more: isProved });
  },
};
