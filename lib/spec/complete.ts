import { declared, type FileOf, type Kind, type SpecOf } from './kinds.js';
import { coarsestTolerance } from './measuredGaps.js';

/**
 * Fills in every default that follows from other values. Lengths in mm, angles in degrees.
 * @param file values each in its own range; `module` or `transverseModule` given
 * @param name base name where the file gives none [one after the kind]
 */
export function complete<K extends Kind>(file: FileOf<K>, name: string): SpecOf<K> {
  const kind = declared(file);
  const spec = kind.complete(file, file.name ?? (name || kind.usualName));
  const tolerance = file.tolerance ?? coarsestTolerance(spec, spec.tolerance);
  // Each kind makes a file of its own.
  return { ...spec, tolerance } as SpecOf<K>;
}
