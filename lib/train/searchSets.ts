import { ranges } from '../spec/ranges.js';
import { LINE_PER_NOZZLE, usualWall } from '../spec/usual.js';
import { radians } from '../tooth/gear.js';
import { leastClearance, planetPlaces } from './assembly.js';
import { merits, ratioDeparture } from './merit.js';
import { alsoMissed, type Judged, type Missed } from './nearMiss.js';
import { opening } from './opening.js';
import type { ResolvedWanted, Span } from './planWanted.js';
import { ratios } from './ratios.js';
import { type PlannedSet, type UnshiftedSet, unshiftedSets } from './unshiftedSet.js';

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
        const missed = assemblyMissed(ratio, 2 * (sun + planet), count, wanted);
        if (missed === 'too much') continue;
        set ??= setOf(sun, planet);
        if (set.tipThickness > 0 && set.trochoidMargin >= 0) judgeSizes(set, count, missed, wanted, take);
      }
    }
  }
}

/** Directions of equally spaced planets, degrees, by their number. */
const equalPlaces = Array.from({ length: ranges.planets[1] + 1 }, (_, count) =>
  Array.from({ length: count }, (_, i) => (360 * i) / count),
);

/** Planet tooth counts that keep planet and ring in their spans. */
function planetsBetween(sun: number, planet: Span, ring: Span): [number, number] {
  return [
    Math.max(planet.least, Math.ceil((ring.least - sun) / 2)),
    Math.min(planet.most, Math.floor((ring.most - sun) / 2)),
  ];
}

/** What planets that cannot stand at equal angles miss: nothing where the nearest places are wanted. */
export function assemblyMissed(
  before: Missed,
  teeth: number,
  count: number,
  { spacing }: ResolvedWanted,
): Missed {
  return spacing === 'nearest' ? before : alsoMissed(before, 'assembly', unevenness(teeth, count));
}

/** What is left to ask of a set with a planet count, module by module. */
export function judgeSizes(
  set: PlannedSet,
  planets: number,
  before: Missed,
  wanted: ResolvedWanted,
  take: (found: Judged) => void,
): void {
  const short = (wanted.engagement - set.engagement) / wanted.engagement;
  let missed = alsoMissed(before, 'engagement', short);
  if (missed === 'too much') return;
  const teeth = set.sunTeeth + set.ringTeeth;
  const spacing = wanted.spacing === 'equal' || teeth % planets === 0 ? 'equal' : 'nearest';
  const places =
    spacing === 'equal' ? equalPlaces[planets] : planetPlaces(set.sunTeeth, set.ringTeeth, planets);
  const open = opening(places, set);
  if (wanted.opening !== null)
    missed = alsoMissed(missed, 'opening', (open.arc - wanted.opening) / wanted.opening);
  const clearance = leastClearance(places, set.centreDistance, set.planetTipRadius);
  const turns = ratios(set.sunTeeth, set.ringTeeth);
  for (const module of wanted.module) {
    const overlap = (wanted.gap / module - clearance) / (2 * set.planetTipRadius);
    const outerDiameter = 2 * (set.ringRootAsMade(wanted.gap / module) * module + rimOf(module, wanted));
    let miss = alsoMissed(missed, 'neighbours', overlap);
    miss = alsoMissed(miss, 'bed', outerDiameter / wanted.bed - 1);
    if (wanted.nozzle !== null) {
      const line = LINE_PER_NOZZLE * wanted.nozzle;
      miss = alsoMissed(miss, 'nozzle', 1 - set.tipAsMade(wanted.gap / module) * (module / line));
    }
    if (wanted.largest !== null)
      miss = alsoMissed(
        miss,
        wanted.largest === wanted.outerDiameter ? 'outerDiameter' : 'hole',
        outerDiameter / wanted.largest - 1,
      );
    if (miss === 'too much') continue;
    const figures = {
      engagement: set.engagement,
      planets,
      opening: open,
      ratios: turns,
      outerDiameter,
      toothThickness: toothThickness(set, module, wanted),
    };
    const overall = merits.overall.of(figures, wanted);
    take({
      set,
      planets,
      module,
      spacing,
      outerDiameter,
      opening: open,
      ratios: turns,
      merit: wanted.by === 'overall' ? overall : merits[wanted.by].of(figures, wanted),
      overall,
      miss,
    });
  }
}

/** Of sun or planets, the lesser, on the reference circle in the normal section, half the gap off each flank, mm. */
function toothThickness({ shifts }: PlannedSet, module: number, wanted: ResolvedWanted): number {
  const angle = radians(wanted.pressureAngle);
  const shift = shifts ? Math.min(shifts.sun, shifts.planet) : 0;
  return (Math.PI / 2 + 2 * shift * Math.tan(angle)) * module - wanted.gap / Math.cos(angle);
}

/** Wall outside the ring's root circle, mm. */
export function rimOf(module: number, { rim, rack }: ResolvedWanted): number {
  return rim ?? usualWall({ rack, module });
}

/** By how much the ratio of a set misses the one wanted. */
export function ratioMissed(sun: number, ring: number, wanted: ResolvedWanted): Missed {
  if (!wanted.ratio) return null;
  const departure = ratioDeparture(ratios(sun, ring), wanted);
  return alsoMissed(null, 'ratio', (departure - wanted.ratio.tolerance) / Math.abs(wanted.ratio.value));
}

/**
 * How far the worst planet would sit from its equal place, as a share of the equal angle; 0 when the set
 * assembles evenly.
 */
function unevenness(teeth: number, count: number): number {
  const equal = teeth / count;
  let worst = 0;
  for (let i = 1; i < count; i++) worst = Math.max(worst, Math.abs(Math.round(i * equal) - i * equal));
  return worst / equal;
}
