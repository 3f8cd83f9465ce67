import { type Problem, problemOf } from '../../refusal.js';
import type { PlanetarySpec } from '../types.js';
import { gearFeatureProblems, planetFeatureProblems } from './gearFeatures.js';
import { gripProblems, ringFeatureProblems } from './ringFeatures.js';
import { type Body, FLOOR_LAYERS, footEdge, notWith, WALL_LINES } from './room.js';
import { rootRadius, rootsFollow } from './roots.js';
import { type Rule, toothSizes } from './rule.js';

/** Every feature of sun, planets and ring finds room in its part. */
export const featureRoom: Rule<'planetary'> = {
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
  find(spec) {
    if (!rootsFollow(spec)) return anywhere(spec);
    const roots = { sun: rootRadius(spec, 'sun'), planets: rootRadius(spec, 'planets') };
    return featureProblems(spec, { ...roots, ring: rootRadius(spec, 'ring') });
  },
};

/** Root radii as made, mm. */
export type Roots = Record<'sun' | 'planets' | 'ring', number>;

/** What finds no room in its part, or beside a carrier. */
export function featureProblems(spec: PlanetarySpec, roots: Roots): Problem[] {
  const { sun, planets, ring } = spec;
  const hindered = besideCarrier(spec);
  if (hindered.length) return hindered;
  const body = bodyOf(spec);
  const edge = footEdge(spec);
  return [
    ...gearFeatureProblems(sun, body('sun', roots.sun - edge)),
    ...planetFeatureProblems(planets, body('planets', roots.planets)),
    ...ringFeatureProblems(ring, ring.rim - edge, body('ring', roots.ring + edge)),
  ];
}

/** Letters that stand up would meet a plate that lies over them. */
function raisedUnder({ sun, planets, carrier }: PlanetarySpec): Problem[] {
  if (carrier === 'none' || carrier.plates === 'below') return [];
  const under = { planets: planets.text, ...(carrier.centre === 'closed' && { sun: sun.text }) };
  return Object.entries(under).flatMap(([part, text]) =>
    text?.style === 'raised'
      ? [
          problemOf('excluded', `${part}.text.style`, text.style, 'must be sunk under a plate above', [
            'sunk',
          ]),
        ]
      : [],
  );
}

/** What finds no room wherever root circles turn out to be. */
function anywhere(spec: PlanetarySpec): Problem[] {
  const hindered = besideCarrier(spec);
  if (hindered.length) return hindered;
  const body = bodyOf(spec);
  const { sun, planets, ring } = spec;
  return [
    ...gearFeatureProblems(sun, body('sun', Number.POSITIVE_INFINITY)),
    ...planetFeatureProblems(planets, body('planets', Number.POSITIVE_INFINITY)),
    ...gripProblems(ring, ring.rim - footEdge(spec), body('ring', 0)),
  ];
}

function bodyOf({ printer, faceWidth }: PlanetarySpec) {
  return (part: keyof Roots, root: number): Body => ({
    part,
    root,
    faceWidth,
    wall: WALL_LINES * printer.lineWidth,
    floor: FLOOR_LAYERS * printer.layer,
  });
}

/** Pins go through the planets, and a closed plate lies over the sun. */
function besideCarrier(spec: PlanetarySpec): Problem[] {
  const { sun, planets, carrier } = spec;
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
    ...raisedUnder(spec),
  ];
}
