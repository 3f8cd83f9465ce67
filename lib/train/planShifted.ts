import { Refusal, refuse } from '../spec/refusal.js';
import { resolveSpec } from '../spec/resolveSpec.js';
import { allowsEqualSpacing } from './assembly.js';
import type { Judged } from './nearMiss.js';
import { planParameters } from './planParameters.js';
import type { ResolvedWanted } from './planWanted.js';
import { judgeSizes, ratioMissed } from './searchSets.js';
import { type ShiftCounts, shiftFrame } from './shifts/frame.js';
import { settledTrial } from './shifts/settled.js';
import { shiftForm, solveFor } from './shifts/specShifts.js';
import { contactOf, halfAngle } from './shifts/trial.js';
import type { PlannedSet } from './unshiftedSet.js';

/** How far the ring's teeth may be from z_sun + 2 z_planet. */
const MOST_OFF = 2;
/** More solves than this take longer than anyone waits: some milliseconds each. */
const MOST_SOLVES = 5000;

/** Shift sums that are looked through move planets out by no more than this, in modules. */
const FARTHEST = 2.5;

/** A set whose shifts are to be found. */
interface Job extends ShiftCounts {
  planets: number;
  module: number;
}

/**
 * Hands every equally spaced set in the spans of `wanted` whose ring has one or two teeth more or fewer than
 * z_sun + 2 z_planet, and for which shifts are found, to `take`, as `searchSets` does. Sets that miss the ratio or do
 * not assemble evenly are passed over.
 * @throws Refusal where more than 5000 sets would have to be solved
 * Source: `solveShifts`, with what `make` would ask of it.
 */
export function searchShifted(wanted: ResolvedWanted, take: (found: Judged) => void): void {
  const jobs = jobsOf(wanted);
  if (jobs.length > MOST_SOLVES) {
    const rule = `would mean to find the shifts of ${jobs.length} sets, at most ${MOST_SOLVES}: ask for fewer modules, planets or teeth, or for a ratio`;
    refuse('shifts', 'solve', rule, ['none']);
  }
  for (const job of jobs) {
    const set = solvedSet(job, wanted);
    if (set) judgeSizes(set, job.planets, null, { ...wanted, module: [job.module] }, take);
  }
}

function jobsOf(wanted: ResolvedWanted): Job[] {
  const { sunTeeth, planetTeeth, ringTeeth, planets } = wanted;
  const jobs: Job[] = [];
  for (let sun = sunTeeth.least; sun <= sunTeeth.most; sun++) {
    const most = Math.min(planetTeeth.most, Math.floor((ringTeeth.most + MOST_OFF - sun) / 2));
    for (let planet = planetTeeth.least; planet <= most; planet++)
      for (let off = -MOST_OFF; off <= MOST_OFF; off++) {
        const ring = sun + 2 * planet + off;
        if (off === 0 || ring < ringTeeth.least || ring > ringTeeth.most) continue;
        if (ratioMissed(sun, ring, wanted) !== null) continue;
        for (let count = planets.least; count <= planets.most; count++)
          if (allowsEqualSpacing(sun, ring, count) && planetsFit(sun, planet, ring, count))
            for (const module of wanted.module)
              jobs.push({ sunTeeth: sun, planetTeeth: planet, ringTeeth: ring, planets: count, module });
      }
  }
  return jobs;
}

/**
 * Whether planets without teeth would fit farther out than shifts ever put them: their reference circles must, and
 * tips only ask for more room.
 */
function planetsFit(sun: number, planet: number, ring: number, count: number): boolean {
  const largest = Math.max(sun + planet, ring - planet) / 2 + FARTHEST;
  return 2 * largest * Math.sin(Math.PI / count) > planet;
}

function solvedSet(job: Job, wanted: ResolvedWanted): PlannedSet | null {
  const { sunTeeth, planetTeeth, ringTeeth } = job;
  const none = { sun: 0, planet: 0, ring: 0 };
  const { sun, planets, ring, ...file } = planParameters({ ...job, profileShifts: none }, wanted);
  try {
    const spec = resolveSpec({
      ...file,
      profileShift: 'solve',
      sun: { teeth: sun.teeth },
      planets: { teeth: planets.teeth, count: planets.count },
      ring: { ...ring, profileShift: undefined },
      tolerance: COARSEST,
    });
    const shifts = solveFor(spec);
    if ('refused' in shifts) return null;
    const frame = shiftFrame(job, shiftForm(spec));
    const trial = settledTrial(frame, { sun: shifts.sun, planet: shifts.planet });
    if (!trial) return null;
    const contact = contactOf(frame, trial);
    const tip = (part: 'sun' | 'planet', radius: number) =>
      (2 * radius * halfAngle(frame, part, trial[part], radius)) /
      Math.hypot(1, (frame.tanHelix * radius) / frame[part].referenceRadius);
    return {
      sunTeeth,
      planetTeeth,
      ringTeeth,
      shifts: { sun: shifts.sun, planet: shifts.planet, ring: shifts.ring },
      centreDistance: shifts.centreDistance,
      sunTipRadius: trial.sunTip,
      planetTipRadius: trial.planetTip,
      ringTipRadius: trial.ringTip,
      engagement: Math.min(contact.inner, contact.outer),
      ringRootAsMade: () => trial.ringRoot,
      tipAsMade: () => Math.min(tip('sun', trial.sunTip), tip('planet', trial.planetTip)),
    };
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** The tolerance of the meshes does not change their numbers, and the coarsest is never refused for its size. */
const COARSEST = 0.2;
