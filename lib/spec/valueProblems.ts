import type { Problem } from '../refusal.js';
import { problemIn } from './issues.js';
import { type Plain, putAt } from './plainData.js';
import { valueFindings } from './resolveSpec.js';

/** A planetary set with no more than it must have. */
const BARE: Plain = {
  kind: 'planetary',
  module: 1,
  faceWidth: 20,
  sun: { teeth: 15 },
  planets: { teeth: 15, count: 3 },
};

/**
 * What is wrong with one value of a planetary set's parameter file, rules between values left aside: what the schema
 * says of it, in the words of the file.
 * @param path of the parameter, dotted
 * @param parameter what the caller calls it, in place of the path [the path]
 */
export function valueProblems(path: string, value: unknown, parameter = path): Problem[] {
  return valueFindings(putAt(BARE, path.split('.'), value))
    .filter((found) => found.parameter === path || found.parameter.startsWith(`${path}.`))
    .map((found) => ({ ...problemIn(found), parameter: parameter + found.parameter.slice(path.length) }));
}
