import type { Problem } from '../../refusal.js';
import type { FileOf, FileSpec } from '../kinds.js';
import type { Kind, SpecOf } from '../types.js';

/** A rule of one kind of file, or of several. */
export type Rule<K extends Kind = Kind> = RuleOn<SpecOf<K>, FileOf<K>>;

/** A rule between parameters that are each in their own range. */
export interface RuleOn<S, F> {
  /** Parameters the rule reads; it is left out where one of them has a problem of its own. */
  needs: readonly string[];
  /**
   * What breaks the rule.
   * @param spec the file with its defaults
   * @param file the values as they were given
   */
  find(spec: S, file: F): Problem[];
}

/** Parameters that size the teeth of every gear. */
export const toothSizes = ['module', 'pressureAngle', 'rack', 'helix'] as const;

/** The gears of files of every kind. */
export const gears = ['sun', 'planets', 'ring', 'pinion', 'wheel', 'gear'] as const;

/** Parameters that size the lines that walls are made of. */
export const lines = ['printer.nozzle', 'printer.lineWidth'] as const;

/** The parameter that gives the module in this file. */
export function moduleParameter(file: FileSpec): 'module' | 'transverseModule' {
  return file.module === undefined ? 'transverseModule' : 'module';
}
