import type { Spec } from '../../spec/types.js';
import type { Place } from './place.js';
import type { Train } from './train.js';

/** How a kind of file becomes a train. */
export interface Arrangement<S extends Spec> {
  /**
   * Teeth, shifts and radii as made.
   * @throws Refusal when teeth cannot run together, or bores and features find no room
   */
  numbers(spec: S): Train<S>;
  /** Where every copy of each gear stands, in the order of the train's gears: where all meshes meet at once. */
  places(train: Train): Place[][];
  /** What else of the file is drawn otherwise than asked [nothing], mm. */
  drawn?(spec: S, growth: number, scale: number): Partial<S>;
}
