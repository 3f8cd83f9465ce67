import { resolveTried } from '../lib/proof/nearest/workingOffers.js';
import { withProfile } from '../lib/spec/profileFile.js';
import type { Spec } from '../lib/spec/types.js';
import { baseNameOf } from './baseName.js';
import { profileAt, readDataFile } from './dataFile.js';

/**
 * The parameter file at a path, checked and with every default filled in; named after the file where it gives no
 * name.
 * @param profile path of a profile file, which fills printer and filament where the file gives none of its own
 * @throws Refusal where there is no such file, or its contents are refused
 */
export function readSpecFile(path: string, profile?: string): Spec {
  const data = readDataFile(path);
  const name = baseNameOf(path, data);
  return resolveTried(withProfile(data, profile === undefined ? {} : profileAt(profile)), name);
}
