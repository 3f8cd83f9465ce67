import { Lexer } from 'yaml';
import { refuse } from '../refusal.js';

/** Bounds of a parameter file: far above any real one, low enough that nothing can hang or exhaust memory. */
const LONGEST_TEXT = 1_000_000;
/** Marks, words and breaks of a file, where nothing else is said. */
const MOST_TOKENS = 20_000;
const DEEPEST_BRACKETS = 16;
const MOST_MARKS_A_LINE = 8;
const MOST_INDENT = 100;
const INDENTED = `is indented more than ${MOST_INDENT} columns`;

/** Characters that no text file holds: control characters but tab and line ends, lone surrogates, non-characters. */
const NOT_TEXT = /(?![\t\n\r\u0085])[\p{Cc}\p{Cs}\ufffd-\uffff]/u;

/**
 * Refuses text that is no parameter file before any of it is understood: empty, over 1 MB, binary, or so nested or
 * so full of marks that reading it could take long.
 * @param mostTokens marks, words and breaks that it may have
 * @throws Refusal
 */
export function guardText(text: string, mostTokens = MOST_TOKENS): void {
  if (text.length > LONGEST_TEXT)
    refuse('too-large', 'file', `${text.length} characters`, 'is more than 1 MB');
  if (text.trim() === '') refuse('empty', 'file', text, 'is empty');
  const strange = NOT_TEXT.exec(text);
  const rule = 'is not text: it holds characters that no text has';
  if (strange) refuse('not-text', 'file', `line ${lineOf(text, strange.index)}`, rule);
  // Deep indentation makes the YAML reader's own patterns explode, so it is met before that reader runs.
  const indented = new RegExp(`^[ \\t]{${MOST_INDENT + 1}}`, 'm').exec(text);
  if (indented) refuse('too-large', 'file', `line ${lineOf(text, indented.index)}`, INDENTED);
  guardTokens(text, mostTokens);
}

function guardTokens(text: string, mostTokens: number): void {
  let tokens = 0;
  let depth = 0;
  let marks = 0;
  for (const token of new Lexer().lex(text)) {
    if (++tokens > mostTokens)
      refuse('too-large', 'file', `${text.length} characters`, 'holds too many entries');
    if (token === '[' || token === '{') depth++;
    else if (token === ']' || token === '}') depth--;
    else if (token === '-' || token === '?') marks++;
    else if (token === '\n' || token === '\r\n') marks = 0;
    const rule = `is nested more than ${DEEPEST_BRACKETS} levels deep`;
    if (depth > DEEPEST_BRACKETS || marks > MOST_MARKS_A_LINE)
      refuse('too-large', 'file', `${text.length} characters`, rule);
  }
}

function lineOf(text: string, index: number): number {
  return text.slice(0, index).split('\n').length;
}
