import type { PlanetFeatures } from '../../spec/features/types.js';
import { type Blank, noFeature, throughHole } from '../blank.js';
import type { Level } from '../stack/column.js';
import { chordsOf, circlePoints } from '../stack/contour.js';
import { type Feature, together } from '../stack/stack.js';
import { throughFeature } from './axisHole.js';
import type { FeatureContext } from './context.js';
import { lettering } from './lettering.js';
import { dimplePit, flatPit } from './pit.js';

/** A planet and its features. @throws Refusal when text finds no room */
export function planetBlank(planet: PlanetFeatures, context: FeatureContext): Blank {
  const { hole, dimple, pocket, text } = planet;
  const { faceWidth, rootRadius } = context;
  const inner = Math.max(0, ...[hole, dimple, pocket].map((opening) => (opening ? opening.diameter / 2 : 0)));
  const letters = text ? lettering(text, faceWidth, { inner, outer: rootRadius }, context) : noFeature;
  return { feature: together([inMiddle(planet, context), letters]) };
}

function inMiddle(
  { hole, dimple, pocket }: PlanetFeatures,
  { faceWidth, tolerance }: FeatureContext,
): Feature {
  if (hole && pocket) {
    const count = chordsOf(pocket.diameter / 2, tolerance);
    const round = (diameter: number) => circlePoints(diameter / 2, tolerance, [0, 0], count);
    const floor = faceWidth - pocket.depth;
    const levels: Level[] = [
      { z: 0, outline: round(hole.diameter) },
      { z: floor, outline: round(hole.diameter) },
      { z: floor, outline: round(pocket.diameter) },
      { z: faceWidth, outline: round(pocket.diameter) },
    ];
    return throughFeature(levels);
  }
  if (hole) return throughHole(circlePoints(hole.diameter / 2, tolerance), faceWidth);
  if (pocket) return flatPit(circlePoints(pocket.diameter / 2, tolerance), pocket.depth, faceWidth);
  return dimple ? dimplePit(dimple.diameter, dimple.depth, faceWidth, tolerance) : noFeature;
}
