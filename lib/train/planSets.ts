import { type Judged, nearer, sayMiss } from './nearMiss.js';
import { byMerit, type NearMiss, type PlanRow, planRow } from './planRow.js';
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

/**
 * Every planetary set without profile shift and with equally spaced planets that answers `wanted`, ranked.
 * Each set is coaxial (z_ring = z_sun + 2 z_planet), assembles ((z_sun + z_ring)/N is whole), keeps its
 * neighbouring planets apart by the gap, has teeth that neither come to a point nor foul each other, and reaches
 * the engagement asked for.
 * @throws Refusal with every problem in `wanted`
 * @example planSets({ planets: 5, module: 1.5, outerDiameter: 100 }).rows[0]
 * Source: handbook conditions of planetary sets (`assembly.ts`), ISO 21771 for the sizes.
 */
export function planSets(wanted: WantedSets = {}): Plan {
  const full = readWanted(wanted);
  const rows = ranked<Judged>(full.limit, byMerit);
  const nearMisses = ranked<Judged>(full.limit, nearer);
  searchSets(full, (found) => (found.miss === null ? rows : nearMisses).offer(found));
  return {
    wanted: full,
    rows: rows.kept.map(planRow),
    nearMisses: nearMisses.kept.map((found) => ({ ...planRow(found), fails: sayMiss(found, full) })),
  };
}
