import { type Problem, refuse, refuseAll } from '../refusal.js';
import { problemIn, withoutMisspelt } from '../spec/issues.js';
import { nearestName } from '../spec/name.js';
import { isMapping, type Plain, plainData } from '../spec/plainData.js';
import { type Profile, withProfile } from '../spec/profileFile.js';
import { valueFindings } from '../spec/resolveSpec.js';
import { variantNames } from './names.js';
import { expandVariants, type Variants } from './variants.js';

/** A parameter file with its variants, named and counted. */
export interface Batch {
  /** Name of the file itself. */
  name: string;
  /** The file, its variants left out. */
  data: Plain;
  variants: Variants;
  names: string[];
}

/**
 * A parameter file read as a batch. What is wrong with it whatever the variant is refused here; what a variant brings
 * with it, or could mend, is left to that variant.
 * @param object plain data as read
 * @param fallbackName base name where the file gives none
 * @throws Refusal with every problem found
 */
export function readBatch(object: unknown, fallbackName: string, profile: Profile): Batch {
  const all = plainData(object);
  const given = isMapping(all) ? all.variants : undefined;
  const findings = withoutMisspelt(valueFindings(withProfile(all, profile)));
  const ofVariants = findings.filter(({ parameter }) => under(parameter, 'variants'));
  const paths = ofVariants.length || given === undefined ? [] : expandVariants(given as Plain).paths;
  const problems: Problem[] = findings
    .filter(({ parameter }) => !paths.some((path) => under(parameter, path) || under(path, parameter)))
    .map(problemIn);
  refuseAll(problems.slice(0, MOST_PROBLEMS));
  const rule = 'is required by batch: a mapping from parameter to values, or a list of overrides';
  if (!isMapping(all) || given === undefined)
    refuse('missing', 'variants', undefined, rule, [{ 'fit.gap': [0.2, 0.25] }]);
  const { variants: _, ...data } = all;
  const variants = expandVariants(given as Plain);
  const name = typeof data.name === 'string' ? data.name : nearestName(fallbackName);
  return { name, data, variants, names: variantNames(nearestName(name), variants) };
}

/** More problems than this say nothing new. */
const MOST_PROBLEMS = 101;

function under(path: string, group: string): boolean {
  return path === group || path.startsWith(`${group}.`);
}
