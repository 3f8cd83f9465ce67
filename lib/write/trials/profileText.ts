import { isMap, isScalar, parseDocument } from 'yaml';
import type { Advice } from '../../fit/trials/advise.js';
import { showConditions } from '../../fit/trials/conditions.js';
import { refuse } from '../../refusal.js';
import { asProfile } from '../../spec/profileFile.js';
import { readProfile } from '../../spec/readSpec.js';

/** The key that names what the rest of a group is about. */
const namedBy: Record<string, string> = { printer: 'profile', filament: 'material' };

/**
 * A profile file with what is advised. Of a profile that is there already everything else stays, comments too.
 * @param before its text; undefined for a new one
 * @param json whether a new one is to be JSON
 * @throws Refusal where what is there is no profile, or is one of another printer or material
 */
export function profileText(advice: Advice, before: string | undefined, json: boolean): string {
  const { profile, conditions, trials, readings } = advice;
  const groups = Object.entries(profile) as [string, Record<string, unknown>][];
  if (before === undefined) {
    if (json) return `${JSON.stringify(profile, null, 2)}\n`;
    const lines = groups.flatMap(([group, values]) => [
      `${group}:`,
      ...Object.entries(values).map(([key, value]) => `  ${key}: ${value}`),
    ]);
    return [
      `# Profile for ${showConditions(conditions).replace(/\s+/g, ' ')}: pass it to make with --profile.`,
      `# Found by cogweave trial advise from ${trials.own + trials.others} trials and ${readings} readings; mm, shrinkage in percent.`,
      profile.fit
        ? '# The gap belongs to this growth: change both or neither, and leave fit.gap out of the parameter file.'
        : '# Too little is known of the gap.',
      ...lines,
      '',
    ].join('\n');
  }
  readProfile(before);
  const text = dataOf(before) ? jsonWith(before, groups) : yamlWith(before, groups);
  readProfile(text);
  return text;
}

function dataOf(text: string): Record<string, unknown> | undefined {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function jsonWith(before: string, groups: [string, Record<string, unknown>][]): string {
  const data = dataOf(before)!;
  for (const [group, values] of groups) {
    const given = data[group];
    const own = typeof given === 'string' ? { [namedBy[group]]: given } : (given as Record<string, unknown>);
    refuseOther(group, own?.[namedBy[group]], values);
    data[group] = { ...own, ...values };
  }
  return `${JSON.stringify(data, null, 2)}\n`;
}

function yamlWith(before: string, groups: [string, Record<string, unknown>][]): string {
  const document = parseDocument(before);
  for (const [group, values] of groups) {
    const given = document.get(group, true) as unknown;
    if (isScalar(given) && typeof given.value === 'string')
      document.set(group, document.createNode({ [namedBy[group]]: given.value }));
    else if (!isMap(given)) document.set(group, document.createNode({}));
    refuseOther(group, document.getIn([group, namedBy[group]]), values);
    for (const [key, value] of Object.entries(values)) document.setIn([group, key], value);
  }
  return document.toString({ lineWidth: 0 });
}

function refuseOther(group: string, there: unknown, values: Record<string, unknown>): void {
  const name = namedBy[group];
  if (there === undefined || values[name] === undefined || there === values[name]) return;
  try {
    refuse('differs', `${group}.${name}`, there, 'is not what the trials were printed with', [values[name]]);
  } catch (error) {
    throw asProfile(error);
  }
}
