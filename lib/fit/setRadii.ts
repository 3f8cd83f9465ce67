import type { PlanetarySpec } from '../spec/types.js';
import type { SetGears } from '../train/setGears.js';
import type { Adjustment } from './adjustment.js';
import { type MadeRadii, madeRadii } from './madeRadii.js';
import { reliefs } from './reliefs.js';

/** Radii of each kind of gear, and what was changed to get them. */
export interface SetRadii {
  sun: MadeRadii;
  planet: MadeRadii;
  ring: MadeRadii;
  /** Each change against the standard tooth. */
  adjustments: Adjustment[];
}

/** The meshes of a planetary set. */
const MESHES = [
  ['sun', 'planet'],
  ['planet', 'ring'],
] as const;

/**
 * Tip and root radii that let the set run: see `madeRadii`.
 * @throws Refusal when a pair has no working pressure angle
 */
export function setRadii(spec: PlanetarySpec, { sun, planet, ring }: SetGears): SetRadii {
  const { radii, adjustments } = madeRadii(spec, { sun, planet, ring }, MESHES, { ...reliefs(spec.fit) });
  return { ...radii, adjustments };
}
