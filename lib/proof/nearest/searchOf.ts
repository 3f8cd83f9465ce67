import { openingSizes, setOf } from '../../fit/train/setOf.js';
import type { Train } from '../../fit/train/train.js';
import { trainNumbers } from '../../fit/train/trainNumbers.js';
import type { PairSpec, PlanetarySpec, Spec, TrainSpec } from '../../spec/types.js';
import { allowsEqualSpacing, leastClearance, planetPlaces } from '../../train/assembly.js';
import { opening } from '../../train/opening.js';
import { specShifts } from '../../train/shifts/specShifts.js';
import type { Change, Ways } from './changes.js';
import { pairWays } from './pairChanges.js';
import { setWays, solved } from './setChanges.js';
import { trainWays } from './trainChanges.js';

/** What of one kind of file is looked through for offers. */
export interface KindSearch<S extends Spec = Spec> {
  /** Every `must` that follows from its numbers and is asked of this kind alone; asked when offers are tried. */
  assembles(train: Train<S>): boolean;
  /** Whether offers are rolled too when they are tried: tips that pass each other too closely show only then. */
  triesRolling: boolean;
  /** What an offer may change. */
  ways(spec: S): Ways;
  /** Whether its tooth counts hang together, so that some are offered in any case. */
  countsHang: boolean;
  /** Shifts of its gears, each with whatever else goes with them. */
  shifted(spec: S, shifts: Change): Change[];
  /** The number at a path that follows from others where a file leaves it out; undefined for one that does not. */
  follows(spec: S, path: string): number | undefined;
}

/** Centre distances that differ by less are one, mm, as the check `coaxial` has it. */
const ONE_DISTANCE = 1e-4;

const planetary: KindSearch<PlanetarySpec> = {
  assembles(train) {
    const set = setOf(train);
    const { spec, inner, outer, radii } = set;
    const { sun, ring, planets } = spec;
    if (planets.spacing !== 'nearest' && !allowsEqualSpacing(sun.teeth, ring.teeth, planets.count))
      return false;
    if (Math.abs(inner.centreDistance - outer.centreDistance) > ONE_DISTANCE) return false;
    const places = planetPlaces(sun.teeth, ring.teeth, planets.count);
    if (!(leastClearance(places, inner.centreDistance, radii.planet.tip) >= spec.fit.gap)) return false;
    const { max, edge } = spec.opening ?? {};
    return max === undefined || opening(places, openingSizes(set), edge).drop <= max;
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
};

/** Gears whose axes and guides the maker holds. */
const parallel: KindSearch<TrainSpec> = {
  assembles: () => true,
  triesRolling: true,
  ways: (spec) => trainWays(spec),
  countsHang: false,
  shifted: (_, shifts) => [shifts],
  follows: () => undefined,
};

const pair: KindSearch<PairSpec> = {
  ...parallel,
  ways: pairWays,
  shifted: (_, shifts) => [shifts, { ...shifts, centreDistance: undefined }],
  // In steps far below what tells centre distances apart, mm.
  follows: (spec, path) =>
    path === 'centreDistance'
      ? Math.round(trainNumbers(spec).meshes[0].centreDistance * 1e5) / 1e5
      : undefined,
};

const searches = { planetary, pair, rack: parallel, gear: parallel };

/** How offers for a file are looked for. */
export function searchOf<S extends Spec>({ kind }: S): KindSearch<S> {
  return searches[kind] as KindSearch<Spec> as KindSearch<S>;
}
