import * as z from 'zod';
import { type Problem, problemOf, Refusal, refuse, refuseAll } from '../refusal.js';
import { findingsOf, problemIn, withoutMisspelt } from './issues.js';
import { closest } from './nearest.js';
import { isMapping, type Plain, plainData } from './plainData.js';
import { withShipped } from './profiles/shipped.js';
import { fit } from './schema/common.js';
import { filament, printer } from './schema/printing.js';

/** What a profile file may hold, as in a parameter file. */
const groups = { printer, filament, fit };
const profileSchema = z.strictObject({
  printer: printer.optional(),
  filament: filament.optional(),
  fit: fit.optional(),
});
/** The key that names what the rest of a group is about. */
const namedBy = { printer: 'profile', filament: 'material' } as const;

/** Printer, filament and fit of a profile file, checked, names of shipped profiles replaced by their values. */
export type Profile = { [Group in keyof typeof groups]?: Plain };

/**
 * The profile in a file's data: `printer`, `filament` and `fit` as a parameter file has them, and nothing else.
 * @throws Refusal with every problem found, each parameter beginning with `profile`
 */
export function resolveProfile(object: unknown): Profile {
  try {
    return checked(plainData(object));
  } catch (error) {
    throw asProfile(error);
  }
}

/** The same problems, said of the profile; anything but a Refusal as it is. */
export function asProfile(error: unknown): unknown {
  if (!(error instanceof Refusal)) return error;
  const renamed = ({ parameter, ...rest }: Problem): Problem => ({
    ...rest,
    parameter: parameter === 'file' ? 'profile' : `profile.${parameter}`,
  });
  const [first, ...others] = error.problems;
  return new Refusal([renamed(first), ...others.map(renamed)]);
}

/**
 * A parameter file's data with a profile's values wherever the file gives none of its own. A file that names
 * another printer or material than the profile takes nothing of that group from it, and no fit either, which was
 * found with them.
 */
export function withProfile(data: unknown, profile: Profile): unknown {
  if (!isMapping(data)) return data;
  const merged = { ...data };
  let ours = true;
  for (const group of ['printer', 'filament'] as const) {
    const base = profile[group];
    if (!base) continue;
    if (namesAnother(base, data[group], namedBy[group])) ours = false;
    else merged[group] = groupOver(base, data[group], namedBy[group]);
  }
  const { fit } = data;
  if (ours && profile.fit && (fit === undefined || isMapping(fit))) merged.fit = { ...profile.fit, ...fit };
  return merged;
}

function checked(data: unknown): Profile {
  const keys = Object.keys(groups);
  const rule = `must be a mapping with the keys ${keys.join(', ')}`;
  if (!isMapping(data)) refuse('wrong-type', 'file', data, rule, [{ printer: 'usual' }]);
  const strange = Object.keys(data).filter((key) => !keys.includes(key));
  const problems: Problem[] = strange.map((key) =>
    problemOf('unknown-key', key, data[key], `unknown key: a profile holds ${keys.join(', ')}`, [
      closest(key, keys),
    ]),
  );
  const own = Object.fromEntries(Object.entries(data).filter(([key]) => keys.includes(key)));
  const shipped = withShipped(own) as Profile;
  const issues = profileSchema.safeParse(shipped).error?.issues ?? [];
  problems.push(...withoutMisspelt(findingsOf(issues, own)).map(problemIn));
  refuseAll(problems);
  return shipped;
}

function namesAnother(base: Plain, given: unknown, name: string): boolean {
  const own = isMapping(given) ? given[name] : given;
  return typeof own === 'string' && base[name] !== undefined && own !== base[name];
}

function groupOver(base: Plain, given: unknown, name: string): unknown {
  const own: unknown = typeof given === 'string' ? { [name]: given } : (given ?? {});
  if (!isMapping(own)) return given;
  const bed = isMapping(base.bed) && isMapping(own.bed) ? { bed: { ...base.bed, ...own.bed } } : {};
  return { ...base, ...own, ...bed };
}
