/** A flag that takes a word. */
export const text = (describe: string) => ({ type: 'string', requiresArg: true, describe }) as const;
