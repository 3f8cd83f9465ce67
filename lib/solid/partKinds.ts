/** The kind of a part by its name: `planet` for `planet-3`, any other name as it is. */
export function kindOf(name: string): string {
  return name.replace(/-\d+$/, '');
}

/** The first part of each kind, in their order, and how many of the kind there are: equal parts are measured once. */
export function firstOfEachKind<T extends { name: string }>(
  parts: readonly T[],
): { part: T; count: number }[] {
  const kinds = new Map<string, { part: T; count: number }>();
  for (const part of parts) {
    const known = kinds.get(kindOf(part.name));
    if (known) known.count++;
    else kinds.set(kindOf(part.name), { part, count: 1 });
  }
  return [...kinds.values()];
}
