import type * as z from 'zod';
import { bolts } from './bolts.js';
import { crank } from './crank.js';
import type { Given } from './feature.js';
import { flange } from './flange.js';
import { grip } from './grip.js';
import { knob } from './knob.js';
import { mount } from './mount.js';
import { nut } from './nut.js';
import { dimple, hole, pocket } from './pits.js';
import { screw } from './screw.js';
import { text } from './text.js';

/** Features of a gear with outside teeth, by their keys in the file. */
export const gearFeatures = { screw, nut, knob, crank, text };

/** Features of each planet. */
export const planetFeatures = { hole, dimple, pocket, text };

/** Features of a ring. */
export const ringFeatures = { grip, flange, bolts, mount, text };

const { text: letters, ...others } = { ...gearFeatures, ...planetFeatures, ...ringFeatures };

/** Letters last, as on every part. */
export const allFeatures = { ...others, text: letters };

export interface GearFeatures extends Made<typeof gearFeatures> {}
export interface PlanetFeatures extends Made<typeof planetFeatures> {}
export interface RingFeatures extends Made<typeof ringFeatures> {}

/** What any part may have. */
export type AnyFeatures = GearFeatures & PlanetFeatures & RingFeatures;

type Kind = (typeof allFeatures)[keyof typeof allFeatures];
type Loose = Extract<Kind, { loose: object }>['loose'];

/** What calipers can read on features. */
export type FeatureReading = KeysOf<Extract<Kind, { reads: object }>['reads'] | Loose['reads']>;

/** Parts that come with features and lie beside the others. */
export type LoosePart = Loose['part'];

type KeysOf<T> = T extends unknown ? keyof T : never;
type Declared = Readonly<Record<string, { schema: z.ZodType }>>;

/** Features with their defaults, those that are not asked for left out. */
export type Made<Kinds extends Declared> = { [K in keyof Kinds]?: MadeOne<Kinds[K]> };

type MadeOne<K extends Declared[string]> = K extends { complete(...args: never[]): infer T }
  ? T
  : Given<K['schema']>;

/** Their keys in a schema. */
export function schemas<const Kinds extends Declared>(kinds: Kinds) {
  return Object.fromEntries(Object.entries(kinds).map(([key, { schema }]) => [key, schema])) as {
    [K in keyof Kinds]: Kinds[K]['schema'];
  };
}
