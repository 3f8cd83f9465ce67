import * as z from 'zod';
import { word } from '../spec/fields.js';
import { featureRanges } from '../spec/ranges.js';
import { asked, type Feature, type Given, length, rounded, type Words } from './feature.js';

const schema = asked(
  'Letters on the top face: straight where the face is whole, along an arc elsewhere',
  'strokes are at least one line of the printer wide; common practice',
  {
    content: z
      .string()
      .regex(/^[ -~]*[!-~][ -~]*$/)
      .max(60)
      .meta({
        description:
          'What it says, in letters and signs of ASCII; {name}, {module}, {gap} and {teeth} stand for the set’s own',
        source: 'this version',
        examples: ['{gap}'],
      }),
    size: length(...featureRanges.letters, 'Height of the capital letters', 5).default(5),
    style: word(['raised', 'sunk'], {
      description: 'Above the face, or below it',
      source: 'common practice',
    }).default('sunk'),
    height: length(0.1, 5, 'How far the letters stand out or are sunk', 0.6, {
      source: 'common practice: three layers',
      defaultRule: '3 × printer.layer',
    }).optional(),
  },
  { content: '{gap}' },
);

/** Letters on a top face, `height` how far they stand out or are sunk. */
export interface Text extends Required<Given<typeof schema>> {}

/** Letters; whether they find room shows when they are laid out (`lettering`). */
export const text = {
  schema,
  complete: (file, { layer }): Text => ({ ...file, height: file.height ?? rounded(3 * layer) }),
  drawn: { size: 'length', height: 'length' },
  // Labels say what is asked, not what is drawn.
  worded: (own, words) => ({ ...own, content: filled(own.content, words) }),
  stands: (own) => (own.style === 'raised' ? own.height : 0),
  flat: { key: 'style', value: 'sunk' },
} satisfies Feature<Given<typeof schema>, Text>;

/** What `{name}`, `{module}` and `{gap}` in a text stand for, at most three decimals. */
export function textWords({ name, module, fit }: { name: string; module: number; fit: { gap: number } }) {
  return { name, module: figure(module), gap: figure(fit.gap) };
}

/** The text with `{word}` filled in; unknown words stay as they are. */
export function filled(content: string, words: Words): string {
  return content.replace(/\{(\w+)\}/g, (whole, word: string) =>
    Object.hasOwn(words, word) ? words[word] : whole,
  );
}

function figure(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
