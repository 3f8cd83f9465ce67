/** The kind of a part by its name: `planet` for `planet-3`, any other name as it is. */
export function kindOf(name: string): string {
  return name.replace(/-\d+$/, '');
}

/** Parts that are alike: the kind's, or those of a part that is unlike its kind. */
export interface AlikeParts<T> {
  /** `planet`, or `planet-2` where that one is unlike the others. */
  kind: string;
  /** The first of them, in their order, which is measured for all. */
  part: T;
  count: number;
}

/** The first part of each kind, in their order, and how many of the kind there are: equal parts are measured once. */
export function firstOfEachKind<T extends { name: string; unlike?: boolean }>(
  parts: readonly T[],
): AlikeParts<T>[] {
  const kinds = new Map<string, AlikeParts<T>>();
  for (const part of parts) {
    const kind = part.unlike ? part.name : kindOf(part.name);
    const known = kinds.get(kind);
    if (known) known.count++;
    else kinds.set(kind, { kind, part, count: 1 });
  }
  return [...kinds.values()];
}
