import { isMapping, type Plain } from '../plainData.js';
import { filamentProfiles } from './filaments.js';
import { printerProfiles } from './printers.js';

/**
 * Data with the names of shipped profiles replaced by what they stand for: `printer: large` and
 * `printer: { profile: large }` get its values wherever the file gives none of its own, `filament: PETG` becomes
 * `{ material: PETG }`. Anything else is left for the schema to judge.
 */
export function withShipped(data: unknown): unknown {
  if (!isMapping(data)) return data;
  const shipped = { ...data };
  if (Object.hasOwn(data, 'printer')) shipped.printer = printerOf(data.printer);
  if (Object.hasOwn(data, 'filament')) shipped.filament = filamentOf(data.filament);
  return shipped;
}

function printerOf(given: unknown): unknown {
  const own: unknown = typeof given === 'string' ? { profile: given } : given;
  if (!isMapping(own) || typeof own.profile !== 'string' || !Object.hasOwn(printerProfiles, own.profile))
    return given;
  const base: Plain = printerProfiles[own.profile as keyof typeof printerProfiles];
  const bed =
    own.bed === undefined || isMapping(own.bed) ? { bed: { ...(base.bed as Plain), ...own.bed } } : {};
  return { ...base, ...own, ...bed };
}

function filamentOf(given: unknown): unknown {
  return typeof given === 'string' && Object.hasOwn(filamentProfiles, given) ? { material: given } : given;
}
