import type { Problem } from '../refusal.js';
import type { PlanetarySpec } from '../types.js';
import { gearFeatureProblems, planetFeatureProblems } from './gearFeatures.js';
import { rootRadius } from './gears.js';
import { ringFeatureProblems } from './ringFeatures.js';
import { type Body, FLOOR_LAYERS, notWith, WALL_LINES } from './room.js';
import { type Rule, toothSizes } from './rule.js';

/** Every feature of sun, planets and ring finds room in its part. */
export const featureRoom: Rule = {
  needs: [
    ...toothSizes,
    'faceWidth',
    'fit.gap',
    'sun',
    'planets',
    'ring',
    'carrier',
    'printer.nozzle',
    'printer.layer',
    'printer.lineWidth',
  ],
  find: featureProblems,
};

/** Nothing is asked of a gear whose shift is still to be found: it has no root circle yet, `setGears` asks again. */
export function featureProblems(spec: PlanetarySpec): Problem[] {
  const { sun, planets, ring, printer, faceWidth } = spec;
  const hindered = besideCarrier(spec);
  if (hindered.length) return hindered;
  const body = (part: 'sun' | 'planets' | 'ring'): Body => ({
    part,
    root: rootRadius(spec, part),
    faceWidth,
    wall: WALL_LINES * printer.lineWidth,
    floor: FLOOR_LAYERS * printer.layer,
  });
  return [
    ...(sun.profileShift === undefined ? [] : gearFeatureProblems(sun, body('sun'))),
    ...(planets.profileShift === undefined ? [] : planetFeatureProblems(planets, body('planets'))),
    ...(ring.profileShift === undefined ? [] : ringFeatureProblems(ring, ring.rim, body('ring'))),
  ];
}

/** Pins go through the planets, and a closed plate lies over the sun. */
function besideCarrier({ sun, planets, carrier }: PlanetarySpec): Problem[] {
  if (carrier === 'none') return [];
  const pinned = (['hole', 'dimple', 'pocket', 'text'] as const).filter(
    (key) => carrier.form === 'pins' && planets[key],
  );
  const covered = (['knob', 'crank'] as const).filter(
    (key) => carrier.plates !== 'below' && carrier.centre === 'closed' && sun[key],
  );
  return [
    ...pinned.flatMap((key) => notWith(`planets.${key}`, planets[key], 'carrier.pin')),
    ...covered.flatMap((key) => notWith(`sun.${key}`, sun[key], 'a closed plate above')),
  ];
}
