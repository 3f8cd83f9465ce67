import { neighbourClearance } from './assembly.js';
import { merit, ratioDeparture } from './merit.js';
import { alsoMissed, type Judged, type Missed } from './nearMiss.js';
import { opening } from './opening.js';
import type { ResolvedWanted, Span } from './planWanted.js';
import { ratios } from './ratios.js';
import { type UnshiftedSet, unshiftedSets } from './unshiftedSet.js';

/** Rim and tooth depth go together by this factor, as in a parameter file without `ring.rim`. Common practice. */
const RIM_PER_DEPTH = 1.2;
/** Least rim of that rule, mm. */
const LEAST_RIM = 3;

/**
 * Hands every unshifted, equally spaced set in the spans of `wanted` to `take`, with the one rule that it misses
 * by a little, if any; sets that miss more are passed over. The cheapest rules are asked first.
 */
export function searchSets(wanted: ResolvedWanted, take: (found: Judged) => void): void {
  const setOf = unshiftedSets(wanted);
  const { sunTeeth, planetTeeth, ringTeeth, planets } = wanted;
  for (let sun = sunTeeth.least; sun <= sunTeeth.most; sun++) {
    const [least, most] = planetsBetween(sun, planetTeeth, ringTeeth);
    for (let planet = least; planet <= most; planet++) {
      const ratio = ratioMissed(sun, sun + 2 * planet, wanted);
      if (ratio === 'too much') continue;
      let set: UnshiftedSet | undefined;
      for (let count = planets.least; count <= planets.most; count++) {
        const missed = alsoMissed(ratio, 'assembly', unevenness(2 * (sun + planet), count));
        if (missed === 'too much') continue;
        set ??= setOf(sun, planet);
        if (set.tipThickness > 0 && set.trochoidMargin >= 0) judgeSizes(set, count, missed, wanted, take);
      }
    }
  }
}

/** Planet tooth counts that keep planet and ring in their spans. */
function planetsBetween(sun: number, planet: Span, ring: Span): [number, number] {
  return [
    Math.max(planet.least, Math.ceil((ring.least - sun) / 2)),
    Math.min(planet.most, Math.floor((ring.most - sun) / 2)),
  ];
}

/** What is left to ask of a set with a planet count, module by module. */
function judgeSizes(
  set: UnshiftedSet,
  planets: number,
  before: Missed,
  wanted: ResolvedWanted,
  take: (found: Judged) => void,
): void {
  const short = (wanted.engagement - set.engagement) / wanted.engagement;
  let missed = alsoMissed(before, 'engagement', short);
  if (missed === 'too much') return;
  const places = Array.from({ length: planets }, (_, i) => (360 * i) / planets);
  const open = opening(places, set);
  if (wanted.opening !== null)
    missed = alsoMissed(missed, 'opening', (open.arc - wanted.opening) / wanted.opening);
  const clearance = neighbourClearance(set.centreDistance, planets, set.planetTipRadius);
  const turns = ratios(set.sunTeeth, set.ringTeeth);
  for (const module of wanted.module) {
    const overlap = (wanted.gap / module - clearance) / (2 * set.planetTipRadius);
    const outerDiameter = 2 * (set.ringRootRadius * module + rimOf(module, wanted));
    let miss = alsoMissed(missed, 'neighbours', overlap);
    if (wanted.outerDiameter !== null)
      miss = alsoMissed(miss, 'outerDiameter', outerDiameter / wanted.outerDiameter - 1);
    if (miss === 'too much') continue;
    const found: Judged = {
      set,
      planets,
      module,
      outerDiameter,
      opening: open,
      ratios: turns,
      merit: 0,
      miss,
    };
    found.merit = merit(
      { engagement: set.engagement, planets, opening: open, ratios: turns, outerDiameter },
      wanted,
    );
    take(found);
  }
}

function rimOf(module: number, { rim, rack }: ResolvedWanted): number {
  return rim ?? Math.max(LEAST_RIM, RIM_PER_DEPTH * (rack.addendum + rack.dedendum) * module);
}

function ratioMissed(sun: number, ring: number, wanted: ResolvedWanted): Missed {
  if (!wanted.ratio) return null;
  const departure = ratioDeparture(ratios(sun, ring), wanted);
  return alsoMissed(null, 'ratio', (departure - wanted.ratio.tolerance) / Math.abs(wanted.ratio.value));
}

/**
 * How far the worst planet would sit from its equal place, as a share of the equal angle; 0 when the set
 * assembles evenly.
 */
function unevenness(teeth: number, count: number): number {
  if (teeth % count === 0) return 0;
  const equal = teeth / count;
  let worst = 0;
  for (let i = 1; i < count; i++) worst = Math.max(worst, Math.abs(Math.round(i * equal) - i * equal));
  return worst / equal;
}
