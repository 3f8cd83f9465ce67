import { type Document, isMap, isSeq, parseDocument } from 'yaml';
import type { Trial } from '../../fit/trials/trialSchema.js';
import { refuse } from '../../refusal.js';
import { isBlank, readLog } from './readLog.js';

/** What stands at the top of a new log. */
const HEADING = ` Trial log of cogweave: what was printed and how it came out. Edit it as you like; lengths in mm.
 gap: fit.gap of the print. outcome: fused, tight (turns with force), free, or loose (rattles, skips).
 growth: printer.growth that it was drawn with. dryness: dry, damp, unknown, or hours dried.`;

/**
 * The text of a log with one trial more at its end. Comments and what is there already stay; a log in JSON stays one.
 * @param text undefined for a new log
 * @param json whether a new log is to be JSON
 * @throws Refusal for a log that is damaged
 */
export function addToLog(text: string | undefined, trial: Trial, json: boolean): string {
  const before = readLog(text ?? '');
  const entry = JSON.parse(JSON.stringify(trial));
  const data = text === undefined ? undefined : jsonOf(text);
  const added =
    data !== undefined || (text === undefined && json)
      ? `${JSON.stringify({ ...data, trials: [...(data?.trials ?? []), entry] }, null, 2)}\n`
      : yamlWith(text ?? '', entry);
  // What would not read back as it should must never be written.
  if (readLog(added).length !== before.length + 1) throw new Error('the log did not take the trial');
  return added;
}

function jsonOf(text: string): { trials?: unknown[] | null } | undefined {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function yamlWith(text: string, entry: unknown): string {
  const document: Document = parseDocument(text.replace(/^\ufeff/, ''));
  if (isBlank(text)) {
    const comment = document.comment;
    document.contents = document.createNode({ trials: [] });
    document.comment = null;
    document.commentBefore = [document.commentBefore, comment].filter(Boolean).join('\n\n') || HEADING;
  }
  if (!isMap(document.contents))
    refuse('wrong-type', 'log', 'line 1', 'must be a mapping with the key trials');
  const trials = document.get('trials');
  if (trials === null || trials === undefined || (isSeq(trials) && !trials.items.length && !trials.comment))
    document.set('trials', document.createNode([]));
  const list = document.get('trials');
  if (!isSeq(list)) refuse('wrong-form', 'log', 'trials', 'must be a list that is written out, no reference');
  list.add(document.createNode(entry));
  const added = document.toString({ lineWidth: 0 });
  return text.includes('\r\n') ? added.replace(/\r?\n/g, '\r\n') : added;
}
