import { type Judged, type Miss, nearer, sayMiss } from './nearMiss.js';
import { byMerit, type NearMiss, type PlanRow, planRow } from './planRow.js';
import { searchShifted } from './planShifted.js';
import type { ResolvedWanted, WantedSets } from './planWanted.js';
import { ranked } from './ranked.js';
import { readWanted } from './readWanted.js';
import { searchSets } from './searchSets.js';

/** What was searched for, the sets that answer it, and those that almost do. */
export interface Plan {
  wanted: ResolvedWanted;
  /** Best merit first. */
  rows: PlanRow[];
  /** Nearest first. */
  nearMisses: NearMiss[];
}

/** What a set misses as it will be made, gap taken off; null where it runs. */
export type AsMade = (found: Judged, wanted: ResolvedWanted) => Miss | null;

/**
 * Every planetary set that answers `wanted`, ranked: those without profile shift, and where asked those with shifts
 * that are found. Each set is coaxial (z_ring = z_sun + 2 z_planet without shift), assembles ((z_sun + z_ring)/N is
 * whole, or planets stand at the nearest places that assemble, where asked), keeps its neighbouring planets apart by
 * the gap, has teeth that neither come to a point nor foul each other, and reaches the engagement asked for.
 * @param asMade asked only of sets that would be shown, since it costs more than all other rules together; a set
 * that would stand among the rows but for it is a near miss. It must answer the same question quickly twice
 * @throws Refusal with every problem in `wanted`
 * Source: handbook conditions of planetary sets (`assembly.ts`), ISO 21771 for the sizes.
 */
export function planSetsBy(wanted: WantedSets, asMade: AsMade): Plan {
  const full = readWanted(wanted);
  const solved: Judged[] = [];
  const moreNear = full.shifts === 'solve' ? searchShifted(full, (found) => solved.push(found)) : undefined;
  for (let width = full.limit; ; width *= WIDER) {
    const rows = ranked<Judged>(width, byMerit);
    const missed = ranked<Judged>(width, nearer);
    const take = (found: Judged) => (found.miss === null ? rows : missed).offer(found);
    searchSets(full, take);
    solved.forEach(take);
    moreNear?.(width, take);
    const best = firstThatRun(rows.kept, full, asMade);
    const near = firstThatRun(missed.kept, full, asMade);
    const short = (found: readonly Judged[], { kept }: { kept: readonly Judged[] }) =>
      found.length < full.limit && kept.length === width;
    if (short(best.running, rows) || short(near.running, missed)) continue;
    const nearMisses = [...near.running, ...best.failing].sort(nearer).slice(0, full.limit);
    return {
      wanted: full,
      rows: best.running.map(planRow),
      nearMisses: nearMisses.map((found) => ({ ...planRow(found), fails: sayMiss(found, full) })),
    };
  }
}

/** How many times more candidates are ranked where too few of the first ones run. */
const WIDER = 8;

/** The first sets that run as they will be made, as many as are shown, and those before them that do not. */
function firstThatRun(
  found: readonly Judged[],
  wanted: ResolvedWanted,
  asMade: AsMade,
): { running: Judged[]; failing: Judged[] } {
  const running: Judged[] = [];
  const failing: Judged[] = [];
  for (const one of found) {
    if (running.length === wanted.limit) break;
    if (one.plain && asMade({ ...one, set: one.plain, plain: undefined }, wanted) === null) continue;
    const miss = asMade(one, wanted);
    if (miss === null) running.push(one);
    else failing.push({ ...one, miss });
  }
  return { running, failing };
}
