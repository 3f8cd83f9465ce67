import type { PlanetarySpec } from '../spec/types.js';
import { type PairSizes, pairSizes } from '../train/pair.js';
import { type SetGears, setGears } from '../train/setGears.js';
import { setBodyRoom } from './bodyRoom.js';
import { type SetRadii, setRadii } from './setRadii.js';

/** A set by its numbers alone. */
export interface SetNumbers {
  spec: PlanetarySpec;
  gears: SetGears;
  radii: SetRadii;
  /** Sun (1) and planet (2). */
  inner: PairSizes;
  /** Planet (1) and ring (2). */
  outer: PairSizes;
}

/**
 * Gears, radii as made and both pairs of a set.
 * @throws Refusal when a pair has no working pressure angle, or bores and features find no room
 */
export function setNumbers(spec: PlanetarySpec): SetNumbers {
  const gears = setGears(spec);
  const radii = setRadii(spec, gears);
  const { sun, planet, ring } = radii;
  const inner = pairSizes(gears.sun, gears.planet, { tipRadius1: sun.tip, tipRadius2: planet.tip });
  const outer = pairSizes(gears.planet, gears.ring, { tipRadius1: planet.tip, tipRadius2: ring.tip });
  setBodyRoom(spec, radii, [inner.centreDistance, outer.centreDistance]);
  return { spec, gears, radii, inner, outer };
}
