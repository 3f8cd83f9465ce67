import { CARRIER } from '../../fit/play/carrierContacts.js';
import type { Motion } from '../../fit/play/contact.js';
import type { LooseSet } from '../../fit/play/looseSet.js';
import { leastDistance } from '../mesh/leastDistance.js';
import type { TriangleTree } from '../mesh/triangleTree.js';
import { movedTree } from './movedTree.js';

/** The finished meshes of a set, which can be moved as rigid bodies. */
export interface MovingSet {
  set: LooseSet;
  /** One tree a part, by name. */
  trees: ReadonlyMap<string, TriangleTree>;
  /** A script changed some part, so that no planet stands for the others [the first one stands for all]. */
  changed?: boolean;
}

/**
 * Least distance between the parts that have moved and all others, mm, looked for up to `within`; 0 where any meet.
 * @param motions by name of the part; parts without one stay
 * @param share of each motion that is made
 * @param counts whether a pair of parts is looked at [every pair]
 */
export function distanceAfter(
  { set, trees }: MovingSet,
  motions: Readonly<Record<string, Motion>>,
  share: number,
  within: number,
  counts: (first: string, second: string) => boolean = () => true,
): number {
  const moved = new Map(
    Object.entries(motions).map(([name, motion]) => [
      name,
      movedTree(trees.get(name)!, scaled(motion, share), centreOf(set, name)),
    ]),
  );
  let least = within;
  for (const [first, second] of mates(set)) {
    if (!(moved.has(first) || moved.has(second)) || !counts(first, second)) continue;
    const a = moved.get(first) ?? trees.get(first)!;
    const b = moved.get(second) ?? trees.get(second)!;
    least = leastDistance(a, b, least)?.distance ?? least;
    if (least === 0) return 0;
  }
  return least;
}

/** A motion times a number; turns about a fixed axis scale with it. */
export function scaled(motion: Motion, share: number): Motion {
  return motion.map((number) => number * share) as unknown as Motion;
}

/** The point that a part's motions turn about: its axis at mid face. */
export function centreOf(
  { sun, planets, ring, faceWidth, lift }: LooseSet,
  name: string,
): [number, number, number] {
  const gear = [sun, ...planets, ring].find((one) => one.name === name);
  const [x, y] = gear?.centre ?? [0, 0];
  return [x, y, lift + faceWidth / 2];
}

/** The parts that one can meet. */
export function matesOf(set: LooseSet, name: string): string[] {
  return mates(set).flatMap(([first, second]) =>
    first === name ? [second] : second === name ? [first] : [],
  );
}

/** All pairs of parts that can meet. */
function mates({ sun, planets, ring, carrier }: LooseSet): [string, string][] {
  const carried = carrier ? [sun, ...planets, ring].map(({ name }): [string, string] => [name, CARRIER]) : [];
  const inMesh = planets.flatMap(({ name }, i): [string, string][] => [
    [sun.name, name],
    [name, ring.name],
    ...(planets.length > 1 ? [[name, planets[(i + 1) % planets.length].name] as [string, string]] : []),
  ]);
  return [...inMesh, ...carried];
}
