/**
 * What cannot be seen for what it is where it stands in a text: control characters (escape sequences begin with one),
 * lone surrogates, line breaks of any script, marks that turn the direction of writing, and letters and marks without
 * any shape (Unicode's format characters and default ignorable code points).
 */
const UNSEEN = String.raw`[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}\ufffe\uffff]`;
const anyUnseen = new RegExp(UNSEEN, 'u');
const everyUnseen = new RegExp(UNSEEN, 'gu');

/** Whether every character of a text can be seen. */
export function isPlain(text: string): boolean {
  return !anyUnseen.test(text);
}

/** The text with what cannot be seen in it written out, `\u202e`: what a message, a table or a page shows of a file. */
export function visible(text: string): string {
  return text.replace(everyUnseen, written);
}

/** The same for lines of text of our own: their line breaks stay. */
export function visibleLines(text: string): string {
  return text.replace(everyUnseen, (character) => (character === '\n' ? character : written(character)));
}

/** Escaped as in JSON, in which it means the same: by UTF-16 code units. */
function written(character: string): string {
  return Array.from({ length: character.length }, (_, i) => {
    return `\\u${character.charCodeAt(i).toString(16).padStart(4, '0')}`;
  }).join('');
}
