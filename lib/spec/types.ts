/** The types of parameter files: what is asked for follows from `kind`. Each is declared beside its schema. */

export type { Bore } from '../features/bore.js';
export type { Rack } from '../tooth/racks.js';
export type { GearSpec } from './kinds/gear.js';
export type { PairSpec } from './kinds/pair.js';
export type { PlanetarySpec } from './kinds/planetary.js';
export type { RackSpec } from './kinds/rack.js';
export type { Kind, Spec, SpecOf, TrainSpec } from './kinds.js';
export type { Bolts, Boss, Carrier, Lips, Pin } from './schema/carrier.js';
export type { Bevel, CommonSpec, Fit, Helix } from './schema/common.js';
export type { ExternalGear, InternalGear } from './schema/gears.js';
export type { CommonLimits, Limits, OpeningAsked } from './schema/limits.js';
export type { Filament, Printer } from './schema/printing.js';
