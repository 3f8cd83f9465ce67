/** A value of a parameter by its dotted path; undefined takes it out. */
export type Changes = [path: string, value: unknown][];
/** Changes that the sentence of a failing check offers, in its order. */
export function offersOf(says: string): Changes[];
/** A copy of `file` with changes made. */
export function withChanges<T extends object>(file: T, changes: Changes): T;
