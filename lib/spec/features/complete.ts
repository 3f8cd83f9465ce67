import type * as z from 'zod';
import { fasteners, type ScrewSize } from './fasteners.js';
import type { gearFeatures, planetFeatures, ringFeatures } from './schema.js';
import type {
  BoltHoles,
  CrankSocket,
  Flange,
  GearFeatures,
  Mount,
  NutPocket,
  PlanetFeatures,
  RingFeatures,
  ScrewHole,
  Text,
} from './types.js';

type FileOf<T extends z.ZodRawShape> = { [K in keyof T]?: z.output<T[K]> };
type Given<T> = Exclude<T, 'none' | undefined>;

/** Features as the file gives them, `none` and absent ones alike. */
export type GearFile = FileOf<typeof gearFeatures>;
export type PlanetFile = FileOf<typeof planetFeatures>;
export type RingFile = FileOf<typeof ringFeatures>;

/** Room for a nut in a printed pocket, mm, and material under it. Common practice, no source. */
const NUT_CLEARANCE = 0.2;
const UNDER_NUT = 2;
/** Layers left under heads. Common practice, no source. */
const FLOOR_LAYERS = 4;
/** Flange beyond the heads of its screws, mm. Common practice, no source. */
const BESIDE_HEADS = 2;
const FLANGE_THICKNESS = 4;

/** What the file asks of a gear with outside teeth, defaults filled in. @param layer of the printer, mm */
export function completeGear(file: GearFile, layer: number): GearFeatures {
  return {
    ...made('screw', file.screw, screwHole),
    ...made('nut', file.nut, nutPocket),
    ...made('knob', file.knob, (knob) => knob),
    ...made('crank', file.crank, (crank): CrankSocket => crank),
    ...made('text', file.text, (text) => lettering(text, layer)),
  };
}

/** What the file asks of each planet. */
export function completePlanet(file: PlanetFile, layer: number): PlanetFeatures {
  return {
    ...made('hole', file.hole, (hole) => hole),
    ...made('dimple', file.dimple, (dimple) => dimple),
    ...made('pocket', file.pocket, (pocket) => pocket),
    ...made('text', file.text, (text) => lettering(text, layer)),
  };
}

/** Sizes that a ring's usual features follow from, mm. */
export interface RingSizes {
  faceWidth: number;
  layer: number;
  lineWidth: number;
}

/** What the file asks of a ring; a panel mount brings a flange with it. */
export function completeRing(file: RingFile, sizes: RingSizes): RingFeatures {
  const { layer } = sizes;
  const { mount } = made('mount', file.mount, (given) => panelMount(given, layer));
  const { flange = mount && usualFlange(mount, sizes) } = made('flange', file.flange, (given) => given);
  return {
    ...made('grip', file.grip, (grip) => grip),
    ...(flange && { flange }),
    ...made('bolts', file.bolts, (bolts): BoltHoles => ({ ...bolts, diameter: hole(bolts) })),
    ...(mount && { mount }),
    ...made('text', file.text, (text) => lettering(text, layer)),
  };
}

/** Wide enough for heads and nuts; as thick as usual, or as thin as the heads allow where the ring is low. */
function usualFlange(mount: Mount, { faceWidth, layer, lineWidth }: RingSizes): Flange {
  const { circle, headDiameter, diameter, nutFlats } = mount;
  const widest = Math.max(headDiameter, (2 * nutFlats) / Math.sqrt(3));
  const head = (headDiameter - diameter) / 2;
  const usual = Math.max(FLANGE_THICKNESS, Math.ceil(head + FLOOR_LAYERS * layer));
  return {
    diameter: Math.ceil(circle + widest + 2 * Math.max(BESIDE_HEADS, 2 * lineWidth)),
    thickness: usual <= faceWidth / 2 ? usual : rounded(head + FLOOR_LAYERS * layer),
    at: 'bottom',
  };
}

function screwHole(file: Given<GearFile['screw']>): ScrewHole {
  const { headDiameter = fasteners[file.size].headDiameter } = file;
  return { ...file, diameter: hole(file), headDiameter };
}

function nutPocket(file: Given<GearFile['nut']>): NutPocket {
  const { nutFlats, nutHeight } = fasteners[file.size];
  return {
    ...file,
    acrossFlats: file.acrossFlats ?? rounded(nutFlats + file.clearance),
    depth: file.depth ?? rounded(nutHeight + file.clearance),
    diameter: hole(file),
  };
}

function panelMount(file: Given<RingFile['mount']>, layer: number): Mount {
  const { medium, nutFlats, nutHeight, headDiameter } = fasteners[file.screw];
  const nutDepth = file.nutDepth ?? rounded(nutHeight + NUT_CLEARANCE);
  return {
    ...file,
    circle: file.circle ?? Math.ceil(file.hole + 3 * medium),
    diameter: file.diameter ?? medium,
    headDiameter: file.headDiameter ?? headDiameter,
    nutFlats: file.nutFlats ?? rounded(nutFlats + NUT_CLEARANCE),
    nutDepth,
    clamp: file.clamp ?? rounded(nutDepth + Math.max(UNDER_NUT, FLOOR_LAYERS * layer)),
  };
}

function lettering(file: Given<GearFile['text']>, layer: number): Text {
  return { ...file, height: file.height ?? rounded(3 * layer) };
}

function hole(file: { size: ScrewSize; series: 'fine' | 'medium' | 'coarse'; diameter?: number }): number {
  return file.diameter ?? fasteners[file.size][file.series];
}

/** Sums of figures with a few decimals, without the rounding of doubles. */
function rounded(length: number): number {
  return Math.round(length * 1e6) / 1e6;
}

function made<K extends string, F, T>(
  key: K,
  file: F,
  make: (given: Exclude<F, 'none' | undefined>) => T,
): { [P in K]?: T } {
  if (file === undefined || file === 'none') return {};
  return { [key]: make(file as Exclude<F, 'none' | undefined>) } as { [P in K]?: T };
}
