import { drawnTrain } from '../fit/train/drawnTrain.js';
import { fitTrain } from '../fit/train/fitTrain.js';
import { trainNumbers } from '../fit/train/trainNumbers.js';
import { Refusal } from '../refusal.js';
import { MOST_TOLERANCE_PER_GAP } from '../spec/measuredGaps.js';
import { ranges } from '../spec/ranges.js';
import { resolveSpec } from '../spec/resolveSpec.js';
import { LINE_PER_NOZZLE } from '../spec/usual.js';
import { type Judged, type Miss, NEAR } from '../train/nearMiss.js';
import { planParameters } from '../train/planParameters.js';
import { type Plan, planSetsBy } from '../train/planSets.js';
import type { ResolvedWanted, WantedSets } from '../train/planWanted.js';
import { type Check, mustFail } from './check.js';
import { coaxial } from './checks/coaxial.js';
import { contactRatio } from './checks/contactRatio.js';
import { involuteInterference } from './checks/involuteInterference.js';
import { tipThickness } from './checks/tipThickness.js';
import { trochoidInterference } from './checks/trochoidInterference.js';

export type { Plan } from '../train/planSets.js';

/**
 * Every planetary set that answers `wanted`, ranked: exhaustive
 * over tooth counts, planets and modules. Each set shown assembles, fits the bed, and keeps every rule of `make` that
 * can be worked out from its numbers, gap and all.
 * @throws Refusal with every problem in `wanted`
 * @example planSets({ planets: 5, module: 1.5, outerDiameter: 100 }).rows[0]
 * Source: `planSetsBy` for the search, the checks for the rest.
 */
export function planSets(wanted: WantedSets = {}): Plan {
  // The verdict does not depend on how many planets there are: their clearance is the search's own rule.
  const known = new Map<string, Miss | null>();
  return planSetsBy(wanted, (found, full) => {
    const { set, planets, module } = found;
    const shifted = set.shifts ? `${set.ringTeeth} ${planets}` : '';
    const key = `${set.sunTeeth}/${set.planetTeeth} ${module} ${shifted}`;
    const miss = known.has(key) ? known.get(key)! : asMade(found, full);
    known.set(key, miss);
    // Contact that is missing with the gap is no second miss where it is missing without.
    return miss?.rule === found.miss?.rule ? null : miss;
  });
}

/** The first rule that a set breaks as it will be made: those of the parameter file, then those of its teeth. */
function asMade({ set, planets, module, spacing }: Judged, wanted: ResolvedWanted): Miss | null {
  const { sunTeeth, planetTeeth, ringTeeth, shifts: profileShifts = NONE } = set;
  try {
    const spec = resolveSpec({
      ...planParameters(
        { sunTeeth, planetTeeth, ringTeeth, planets, module, spacing, profileShifts },
        wanted,
      ),
      tolerance: Math.min(coarsest(wanted), MOST_TOLERANCE_PER_GAP * wanted.gap),
    });
    const numbers = trainNumbers(spec);
    const plan = { spec, numbers, drawnNumbers: drawnTrain(numbers) };
    const asked = fitTrain(numbers);
    const ring = asked.meshes[1];
    const asks = [
      () => coaxial(plan),
      () => tipThickness(plan),
      () => involuteInterference(asked),
      () => trochoidInterference(ring),
      () => contactRatio(asked),
    ];
    for (const ask of asks) {
      const check = ask();
      if (mustFail(check)) return missOf(check);
    }
    return null;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { rule: 'asMade', share: NEAR, says: `${error.parameter}: ${error.rule}` };
  }
}

const NONE = { sun: 0, planet: 0, ring: 0 };

/** The tolerance of the meshes does not change their numbers, and the coarsest is the least likely to be refused, mm. */
const COARSEST = ranges.tolerance[1];

function coarsest({ nozzle }: ResolvedWanted): number {
  return nozzle === null ? COARSEST : Math.min(COARSEST, LINE_PER_NOZZLE * nozzle);
}

function missOf({ id, says }: Check): Miss {
  return { rule: id === 'contact-ratio' ? 'engagement' : 'asMade', share: NEAR, says: `${id}: ${says}` };
}
