import type { FeatureContext } from '../../features/feature.js';
import type { PlanetFeatures } from '../../features/index.js';
import { lettering } from '../../features/letters/lettering.js';
import { aboutTheAxis, openingsIn } from '../../features/through.js';
import { together } from '../../stack/stack.js';
import { type Blank, noFeature } from '../blank.js';

/** A planet and its features. @throws Refusal when text finds no room */
export function planetBlank(planet: PlanetFeatures, context: FeatureContext): Blank {
  const { text } = planet;
  const { faceWidth, rootRadius } = context;
  const inner = Math.max(0, ...openingsIn(planet).map((width) => width / 2));
  const letters = text ? lettering(text, faceWidth, { inner, outer: rootRadius }, context) : noFeature;
  return { feature: together([aboutTheAxis(planet, faceWidth, context), letters]) };
}
