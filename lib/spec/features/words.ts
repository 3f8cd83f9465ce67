import type { CommonSpec } from '../types.js';

/** What `{name}`, `{module}` and `{gap}` in a text stand for, at most three decimals. */
export function textWords({ name, module, fit }: Pick<CommonSpec, 'name' | 'module' | 'fit'>) {
  return { name, module: figure(module), gap: figure(fit.gap) };
}

/** The text with `{word}` filled in; unknown words stay as they are. */
export function filled(content: string, words: Readonly<Record<string, string>>): string {
  return content.replace(/\{(\w+)\}/g, (whole, word: string) =>
    Object.hasOwn(words, word) ? words[word] : whole,
  );
}

function figure(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
