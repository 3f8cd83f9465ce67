import { drawnSet } from '../../fit/compensation.js';
import { fitSet } from '../../fit/fitSet.js';
import { setNumbers } from '../../fit/setNumbers.js';
import { gearKinds } from '../../solid/buildSet.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { allowsEqualSpacing, leastClearance, planetPlaces } from '../../train/assembly.js';
import { opening } from '../../train/opening.js';
import { mustFail } from '../check.js';
import { contactRatio } from '../checks/contactRatio.js';
import { involuteInterference } from '../checks/involuteInterference.js';
import { thinnestTip } from '../checks/tipThickness.js';
import { trochoidInterference } from '../checks/trochoidInterference.js';
import type { ToothFindings } from '../findings.js';

/** Centre distances that differ by less are one, mm, as the check `coaxial` has it. */
const ONE_DISTANCE = 1e-4;

/**
 * Whether a set keeps every `must` that can be worked out from its numbers and outlines, cheapest first: what the checks
 * ask before anything is rolled or built. Some milliseconds.
 * @throws Refusal where teeth cannot be drawn, or letters find no room
 */
export function setWorks(spec: PlanetarySpec): boolean {
  return assembles(spec) && runs(spec);
}

function assembles({ sun, ring, planets }: PlanetarySpec): boolean {
  return planets.spacing === 'nearest' || allowsEqualSpacing(sun.teeth, ring.teeth, planets.count);
}

function runs(spec: PlanetarySpec): boolean {
  const plan = setNumbers(spec);
  const { inner, outer, radii } = plan;
  if (Math.abs(inner.centreDistance - outer.centreDistance) > ONE_DISTANCE) return false;
  const places = planetPlaces(spec.sun.teeth, spec.ring.teeth, spec.planets.count);
  if (!(leastClearance(places, inner.centreDistance, radii.planet.tip) >= spec.fit.gap)) return false;
  if (!(thinnestTip(plan).thickness > 0)) return false;
  const sizes = {
    centreDistance: inner.centreDistance,
    planetTipRadius: radii.planet.tip,
    ringTipRadius: radii.ring.tip,
    sunTipRadius: radii.sun.tip,
  };
  const { max, edge } = spec.opening ?? {};
  if (max !== undefined && opening(places, sizes, edge).drop > max) return false;
  const set = fitSet(spec, radii);
  const drawn = drawnSet(spec, set);
  const teeth = { ...plan, inner: set.inner, outer: set.outer, set } as ToothFindings;
  if ([involuteInterference, trochoidInterference, contactRatio].some((check) => mustFail(check(teeth))))
    return false;
  // Letters are laid out to see whether they find room: a matter of some dozen milliseconds.
  if ([spec.sun, spec.planets, spec.ring].some(({ text }) => text)) gearKinds(drawn.spec, drawn.set);
  return true;
}
