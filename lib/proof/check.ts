import type { Change } from './nearest/changes.js';

/** How much a failed check weighs: `must` stops the job, `should` is marked, `note` only informs. */
export type Level = 'must' | 'should' | 'note';

/** The one record that every check returns. */
export interface Check {
  /** Which check, for example `coaxial`. One record an id in a sheet. */
  id: string;
  holds: boolean;
  level: Level;
  /** The figure measured (null when it could not be measured), in `unit`. */
  value: number | null;
  /** The figure it is held against (null when there is none), in `unit`. */
  limit: number | null;
  /** `mm`, `deg`, `1` for a pure number, or a named count. */
  unit: string;
  /** One plain sentence: what was found, where, and what would help when it fails. */
  says: string;
}

/** A check that names other tooth counts in its words, each tried; sheets leave the record of them out. */
export interface NamingCheck extends Check {
  sets?: readonly Change[];
}

/** Whether a check fails that must hold. */
export function mustFail({ level, holds }: Check): boolean {
  return level === 'must' && !holds;
}
