import { type Body, FLOOR_LAYERS, notWith, WALL_LINES } from '../../features/room.js';
import { featuresOf, roomProblems } from '../../features/through.js';
import { type Problem, problemOf } from '../../refusal.js';
import type { CommonSpec, PlanetarySpec } from '../types.js';
import { footEdge } from './feet.js';
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
    if (!rootsFollow(spec)) return featureProblems(spec, {});
    const roots = { sun: rootRadius(spec, 'sun'), planets: rootRadius(spec, 'planets') };
    return featureProblems(spec, { ...roots, ring: rootRadius(spec, 'ring') });
  },
};

/** Root radii as made, mm. */
export type Roots = Record<'sun' | 'planets' | 'ring', number>;

/** What finds no room in its part, or beside a carrier. @param roots those that are known */
export function featureProblems(spec: PlanetarySpec, roots: Partial<Roots>): Problem[] {
  const hindered = besideCarrier(spec);
  if (hindered.length) return hindered;
  const edge = footEdge(spec);
  return [
    ...partProblems(spec, 'sun', spec.sun, roots.sun, edge),
    ...partProblems(spec, 'planets', spec.planets, roots.planets),
    ...partProblems(spec, 'ring', spec.ring, roots.ring, edge),
  ];
}

/**
 * What finds no room in one gear.
 * @param part its key in the file
 * @param root radius of its root circle as made, mm; undefined while that is still to be found
 * @param edge wall that is taken from it beside its root circle, mm
 */
export function partProblems(
  { printer, faceWidth }: CommonSpec,
  part: string,
  gear: object,
  root?: number,
  edge = 0,
): Problem[] {
  const common = {
    part,
    faceWidth,
    wall: WALL_LINES * printer.lineWidth,
    floor: FLOOR_LAYERS * printer.layer,
  };
  if (!('rim' in gear) || typeof gear.rim !== 'number')
    return roomProblems(gear, { ...common, root: (root ?? Number.POSITIVE_INFINITY) - edge, rim: 0 });
  const ring: Body = { ...common, root: (root ?? 0) + edge, rim: gear.rim - edge };
  return roomProblems(gear, ring, root === undefined ? 0 : undefined);
}

/** What must be otherwise so that it does not stand above the top face, where it can. */
export function withoutStanding(part: string, gear: object, where: string): Problem[] {
  return featuresOf(gear).flatMap(({ key, kind: { flat, stands }, own }) =>
    flat && stands?.(own)
      ? [
          problemOf(
            'excluded',
            `${part}.${key}.${flat.key}`,
            Reflect.get(own, flat.key),
            `must be ${flat.value} ${where}`,
            [flat.value],
          ),
        ]
      : [],
  );
}

const UNDER_PLATE = 'under a plate above';

/** Pins go through the planets, and a closed plate lies over the sun. */
function besideCarrier({ sun, planets, carrier }: PlanetarySpec): Problem[] {
  if (carrier === 'none') return [];
  const pinned = carrier.form === 'pins' ? featuresOf(planets) : [];
  const above = carrier.plates !== 'below';
  const closed = above && carrier.centre === 'closed';
  const covered = closed ? featuresOf(sun).filter(({ kind }) => kind.reached) : [];
  return [
    ...pinned.flatMap(({ key, own }) => notWith(`planets.${key}`, own, 'carrier.pin')),
    ...covered.flatMap(({ key, own }) => notWith(`sun.${key}`, own, 'a closed plate above')),
    ...(above ? withoutStanding('planets', planets, UNDER_PLATE) : []),
    ...(closed ? withoutStanding('sun', sun, UNDER_PLATE) : []),
  ];
}
