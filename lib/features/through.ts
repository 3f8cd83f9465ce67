import type { Problem } from '../refusal.js';
import type * as stack from '../stack/stack.js';
import { holeLevels, oneHole, throughFeature } from './axisHole.js';
import { type Compensated, drawnSizes } from './drawn.js';
import {
  type Drilled,
  type Feature,
  type FeatureContext,
  type PartSizes,
  rounds,
  type Words,
} from './feature.js';
import { type AnyFeatures, allFeatures, type FeatureReading, type LoosePart, type Made } from './index.js';
import { type Body, notWith } from './room.js';

/** What goes through all features of a part, whatever they are. */

type Kinds = Readonly<Record<string, Feature<object>>>;

const kinds: Kinds = allFeatures;

/** One that a part has: its key, all that there is to say of it, and what the part has. */
export interface One {
  key: string;
  kind: Feature<object>;
  own: object;
}

/** The features of a part, in the order of the list. @param part a file's group, or features */
export function featuresOf(part: object): One[] {
  const given: Readonly<Record<string, object | 'none' | undefined>> = { ...part };
  return Object.entries(kinds).flatMap(([key, kind]) => {
    const own = given[key];
    return own === undefined || own === 'none' ? [] : [{ key, kind, own }];
  });
}

/** The features of a part without what else it has. */
export function onlyFeatures(part: object): AnyFeatures {
  return Object.fromEntries(featuresOf(part).map(({ key, own }) => [key, own]));
}

/** What the file asks of a part, defaults filled in. @param of what such a part may have */
export function completed<K extends Readonly<Record<string, Feature<object>>>>(
  of: K,
  file: object,
  sizes: PartSizes,
): Made<K> {
  const given = new Map(featuresOf(file).map(({ key, own }) => [key, own]));
  const made = Object.entries(of).flatMap(([key, kind]) => {
    const own = given.get(key);
    const whole = own ? (kind.complete?.(own, sizes) ?? own) : kind.usual?.(file, sizes);
    return whole ? [[key, whole]] : [];
  });
  return Object.fromEntries(made);
}

/**
 * What of a part's features finds no room.
 * @param last round that is asked [all]
 */
export function roomProblems(part: object, body: Body, last: number = rounds.length): Problem[] {
  const all = featuresOf(part);
  const found = all.flatMap(({ key, kind, own }) => {
    const other = kind.not?.find((one) => isThere(part, one));
    return other ? notWith(`${body.part}.${key}`, own, `${body.part}.${other}`) : [];
  });
  // What gives way to others is asked after them.
  const inTurn = [...all.filter(({ kind }) => !kind.not), ...all.filter(({ kind }) => kind.not)];
  for (const round of rounds) {
    if (round > last) break;
    for (const { kind, own } of inTurn) found.push(...(kind.rules?.[round]?.(own, part, body) ?? []));
    if (found.length) break;
  }
  return found;
}

function isThere(part: object, key: string): boolean {
  const own: unknown = Reflect.get(part, key);
  return own !== undefined && !(typeof own === 'object' && own && 'shape' in own && own.shape === 'none');
}

/** Features as they are drawn so that they come out as asked. @param words that stand for those in a text */
export function drawnFeatures(part: object, by: Compensated, words: Words): AnyFeatures {
  const drawn = featuresOf(part).map(({ key, kind, own }) => {
    const sized = drawnSizes(own, kind.drawn, by);
    return [key, kind.worded?.(sized, words) ?? sized];
  });
  return Object.fromEntries(drawn);
}

/** A width that calipers can read on a feature, or on a part that comes with it, mm. */
export interface FeatureSize {
  part?: LoosePart;
  feature: FeatureReading;
  size: number;
}

/** What can be read on the features of a part and what lies beside it. @param outer outer diameter of a ring, mm */
export function readings(part: object, outer: number): FeatureSize[] {
  return featuresOf(part).flatMap(({ kind, own }) => {
    const read = (reads: Kinds[string]['reads'], of?: string) =>
      Object.entries(reads ?? {}).flatMap(([feature, take]) => {
        const size = take(own, part, outer);
        return size === undefined ? [] : [{ part: of, feature, size } as FeatureSize];
      });
    return [...read(kind.reads), ...read(kind.loose?.reads, kind.loose?.part)];
  });
}

/** Widths of what features open in a part, mm. */
export function openingsIn(part: object): number[] {
  return featuresOf(part).flatMap(({ kind, own }) => kind.opens?.(own) ?? []);
}

/** How far features stand above the top face of a part, mm. */
export function highestOn(part: object): number {
  return Math.max(0, ...featuresOf(part).map(({ kind, own }) => kind.stands?.(own) ?? 0));
}

/** What features open about the axis of a part: one hole of all that belong to it, or a pit. @param top height of the upper face */
export function aboutTheAxis(part: object, top: number, context: FeatureContext): stack.Feature {
  const all = featuresOf(part);
  const through = oneHole(all.flatMap(({ kind, own }) => kind.hole?.(own) ?? []));
  if (through) return throughFeature(holeLevels(through, top, context.tolerance));
  const [pit] = all.flatMap(({ kind, own }) => kind.pit?.(own, top, context) ?? []);
  return pit ?? { holes: {}, walls: [], faces: [] };
}

/** The circles of holes in a part. */
export function drilledIn(part: object): Drilled[] {
  return featuresOf(part).flatMap(({ kind, own }) => kind.drilled?.(own) ?? []);
}
