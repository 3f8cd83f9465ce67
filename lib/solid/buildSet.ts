import { compensationOf } from '../fit/compensation.js';
import { type FittedTrain, fitDrawn, fitTrain } from '../fit/train/fitTrain.js';
import { trainNumbers } from '../fit/train/trainNumbers.js';
import type { Spec } from '../spec/types.js';
import { type Additions, additionsTo, type Place } from './additions.js';
import { buildTrain } from './buildTrain.js';
import type { Part } from './mesh.js';

/**
 * Every part of a file as a closed mesh in the place where it is printed: `sun`, `planet-1` …, `ring`, and `carrier` if
 * there is one; `pinion` and `wheel` of a pair, `pinion` and `bar` of a rack and pinion, or the one `gear`; what is put on
 * them later lies beside (`clamp-ring`, `crank-handle`). Drawn so that the print comes out as the file asks: growth and
 * shrinkage are compensated. Axis of a set on z, bed at z = 0, the first planet on +x. mm.
 * @throws Refusal when the teeth cannot be made
 */
export function buildSet(spec: Spec): Part[];
/**
 * The same, with solids of a script joined to parts and cut from them; the parts come as a promise.
 * @param additions what is joined and what is cut
 * @throws Refusal when the teeth cannot be made, or an addition is wrong
 */
export function buildSet(spec: Spec, additions: Additions): Promise<Part[]>;
export function buildSet(spec: Spec, additions?: Additions): Part[] | Promise<Part[]> {
  return additions === undefined ? buildTrain(drawnOf(spec)) : buildChanged(spec, additions);
}

async function buildChanged(spec: Spec, additions: Additions): Promise<Part[]> {
  const change = await additionsTo(additions);
  const drawn = drawnOf(spec);
  return change(buildTrain(drawn), { planets: planetPlaces(drawn), scale: compensationOf(spec).scale });
}

function drawnOf(spec: Spec): FittedTrain {
  return fitDrawn(fitTrain(trainNumbers(spec)));
}

/** Where every planet's own frame lies, by its name. */
export function planetPlaces({ gears }: FittedTrain): Map<string, Place> {
  const planets = gears.filter(({ orbits }) => orbits).flatMap(({ places }) => places);
  return new Map(planets.map(({ name, rotation, centre }) => [name, { rotation, centre }]));
}
