import { parse } from 'node:path';
import { refuse } from '../lib/refusal.js';
import { nameFault, nearestName } from '../lib/spec/name.js';
import { isMapping } from '../lib/spec/plainData.js';

/**
 * What results are named after where a file gives no name: its own, without ending.
 * @param data of the file, as read
 * @throws Refusal where the file gives no name, and its own would be taken for something else
 */
export function baseNameOf(path: string, data: unknown): string {
  const { name } = parse(path);
  const fault = isMapping(data) && data.name === undefined ? nameFault(name) : undefined;
  const rule = `cannot give its results their name, which ${fault}; name: in the file would do`;
  if (fault) refuse('bad-name', 'file', path, rule, [`name: ${nearestName(name)}`]);
  return name;
}

/**
 * Refuses a path whose file could not be given to `make` as it is named.
 * @param parameter what gave the path
 * @throws Refusal
 */
export function checkBaseName(parameter: string, path: string): void {
  const { dir, name, ext } = parse(path);
  const fault = nameFault(name);
  if (!fault) return;
  const near = `${nearestName(name)}${ext}`;
  const rule = `is no name for a parameter file: it ${fault}`;
  refuse('bad-name', parameter, path, rule, [dir ? `${dir}/${near}` : near]);
}
