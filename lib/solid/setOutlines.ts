import { fitSet } from '../fit/fitSet.js';
import type { PlanetarySpec } from '../spec/types.js';
import { gearOutline } from '../tooth/outline.js';
import { polar } from '../tooth/polar.js';
import type { ToothProfile } from '../tooth/profile.js';
import { boreOutline } from './bore.js';
import { rimRadius } from './buildSet.js';

/** One part of a set in the transverse plane z = 0, teeth whole (bevels left out). Lengths in mm. */
export interface PartOutline {
  /** `sun`, `planet-1` …, `ring`. */
  name: string;
  centre: [number, number];
  /** Turn of the part about its centre, radians. */
  rotation: number;
  /** x, y of point i at 2i, closed, counter-clockwise, in the part's own frame. The ring's is its toothed inside. */
  outline: Float64Array;
  radii: { reference: number; tip: number; root: number };
  /** Bore of the sun, counter-clockwise. */
  hole?: Float64Array;
  /** Outer radius of the ring. */
  outer?: number;
}

/**
 * The outlines of every part in its place.
 * @throws Refusal when the teeth cannot be made
 */
export function setOutlines(spec: PlanetarySpec): PartOutline[] {
  const set = fitSet(spec);
  const { sun, planet, ring } = set.profiles;
  const shape = (profile: ToothProfile) => ({
    outline: gearOutline(profile, spec.tolerance).points,
    radii: {
      reference: profile.sizes.referenceRadius,
      tip: profile.tipRadius,
      root: profile.rootRadius,
    },
  });
  const hole = Float64Array.from(boreOutline(spec.sun.bore, spec.tolerance).flat());
  const planetShape = shape(planet);
  return [
    { name: 'sun', centre: [0, 0], rotation: 0, ...shape(sun), ...(hole.length ? { hole } : {}) },
    ...set.planets.map(
      ({ angle, rotation }, i): PartOutline => ({
        name: `planet-${i + 1}`,
        centre: polar(set.centreDistance, angle),
        rotation,
        ...planetShape,
      }),
    ),
    {
      name: 'ring',
      centre: [0, 0],
      rotation: set.ringRotation,
      ...shape(ring),
      outer: rimRadius(spec, ring),
    },
  ];
}
