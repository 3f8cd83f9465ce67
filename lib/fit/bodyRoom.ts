import { boreProblems } from '../features/bore.js';
import { refuseAll } from '../refusal.js';
import { bodyProblems } from '../spec/rules/gears.js';
import { rootsFollow } from '../spec/rules/roots.js';
import { trainFeatureProblems } from '../spec/rules/trainFeatures.js';
import { externalGears } from '../spec/rules/trains.js';
import type { PairSpec, PlanetarySpec } from '../spec/types.js';
import type { MadeRadii } from './madeRadii.js';

/** Centre distances that differ by less are one, mm, as the check `coaxial` has it. */
const ONE_DISTANCE = 1e-4;

/**
 * Bores and features find room beside the teeth as they are made. Where that follows from the file alone the rules of
 * `lib/spec` have asked already; a set without a common centre distance is not made, and its check says why.
 * @param distances of sun and planet, of planet and ring, mm
 * @throws Refusal with every size that does not fit, and what does
 */
export function setBodyRoom(
  spec: PlanetarySpec,
  { sun, planet, ring }: Record<'sun' | 'planet' | 'ring', MadeRadii>,
  [inner, outer]: readonly [number, number],
): void {
  if (rootsFollow(spec) || Math.abs(inner - outer) > ONE_DISTANCE) return;
  refuseAll(bodyProblems(spec, { sun: sun.root, planets: planet.root, ring: ring.root }));
}

/** The same for a pair. */
export function pairBodyRoom(spec: PairSpec, radii: Record<'pinion' | 'wheel', MadeRadii>): void {
  if (rootsFollow(spec)) return;
  const rootOf = (part: string) => radii[part === 'pinion' ? 'pinion' : 'wheel'].root;
  const bores = externalGears(spec).flatMap(([part, { bore }]) =>
    boreProblems(part, bore, rootOf(part), spec.printer.lineWidth),
  );
  refuseAll([...bores, ...trainFeatureProblems(spec, rootOf)]);
}
