import { styleText } from 'node:util';
import { type Meaning, type Paint, plain } from '../lib/write/paint.js';

/** Blue and orange rather than green and red, which many cannot tell apart; failing words stand out by weight too. */
const FORMATS: Record<Meaning, Parameters<typeof styleText>[0]> = {
  head: 'bold',
  fails: ['bold', 'yellow'],
  noted: 'cyan',
  holds: 'dim',
};

/** How a stream is to be written to: with colours on a terminal that has them, unless the environment says otherwise. */
export function paintFor(stream: NodeJS.WriteStream, environment = process.env): Paint {
  if (!wantsColours(stream, environment)) return plain;
  return (meaning, words) => styleText(FORMATS[meaning], words);
}

/**
 * FORCE_COLOR (other than 0 or false) asks for colours wherever the output goes and goes before NO_COLOR, which, set
 * to anything, asks for none; both as Node itself has them, and no-color.org (from memory).
 */
function wantsColours(stream: NodeJS.WriteStream, { FORCE_COLOR, NO_COLOR }: NodeJS.ProcessEnv): boolean {
  if (FORCE_COLOR !== undefined) return !['0', 'false'].includes(FORCE_COLOR);
  if (NO_COLOR) return false;
  return stream.isTTY === true && stream.hasColors();
}
