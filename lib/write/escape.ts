import { visible } from '../visible.js';

/**
 * Text made safe for XML and HTML, in element content and in quoted attributes alike. Tabs and line ends
 * become spaces (as a reader makes of them in an attribute). Characters that XML does not allow at all (other
 * control characters, lone surrogates, U+FFFE, U+FFFF) become U+FFFD. What cannot be seen, or turns the direction of what
 * stands around it, is written out: `\u202e`.
 * Source: XML 1.0, production [2] Char and sections 2.4, 3.3.3 and 4.6. Only the five named entities are used:
 * some readers of 3MF refuse numbered ones.
 */
export function escapeText(text: string): string {
  return visible(text.replace(/[\t\n\r]+/g, ' ').replace(FORBIDDEN, '\ufffd')).replace(
    /[&<>"']/g,
    (character) => ENTITIES[character],
  );
}

const FORBIDDEN = /[\p{Cc}\p{Surrogate}\ufffe\uffff]/gu;
const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};
