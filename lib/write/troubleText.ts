import type { Trouble } from '../fit/troubles.js';

/** Troubles in lines of plain text. */
export function troubleText(found: readonly Trouble[]): string {
  const paragraphs = found.map(({ id, symptom, causes, caution }) =>
    [
      `${symptom} (${id})`,
      ...causes.flatMap(({ cause, change }) => [`  ${cause}`, `    change: ${change}`]),
      ...(caution ? [`  Caution. ${caution}`] : []),
    ].join('\n'),
  );
  return [...paragraphs, 'Common practice, no source.'].join('\n\n');
}
