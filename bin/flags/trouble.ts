import { troubles } from '../../lib/fit/troubles.js';

/** The flags of `trouble`. */
export const troubleFlags = {
  json: { type: 'boolean', describe: 'print one JSON document and nothing else' },
} as const;

/** What stands below the flags in the help of `trouble`. */
export const troubleEpilogue = [
  'Without a symptom all are listed. One of these words, or words of the symptom itself:',
  ...troubles.map(({ id, symptom }) => `  ${id}: ${symptom}`),
  '',
  'Examples:',
  '  cogweave trouble wont-turn',
  '  cogweave trouble "teeth skip"',
].join('\n');
