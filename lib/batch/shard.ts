import { refuse } from '../refusal.js';

/** One part of a batch: number `index` (1 first) of `count` parts. */
export interface Shard {
  index: number;
  count: number;
}

const MOST_SHARDS = 10_000;

/**
 * The shard that a text such as `2/8` names.
 * @throws Refusal for the parameter `shard`
 */
export function readShard(text: string): Shard {
  const [, index, count] = (/^\s*(\d{1,6})\s*\/\s*(\d{1,6})\s*$/.exec(text) ?? []).map(Number);
  if (index === undefined)
    refuse('wrong-form', 'shard', text, 'must be I/N: part I, from 1 on, of N parts', ['1/1']);
  const most = Math.min(Math.max(count, 1), MOST_SHARDS);
  const rule = `must be I/N with I from 1 to N, and N at most ${MOST_SHARDS}`;
  if (count !== most || index < 1 || index > count)
    refuse('out-of-range', 'shard', text, rule, [`${Math.min(Math.max(index, 1), most)}/${most}`]);
  return { index, count };
}

/** Whether variant `variant` (0 first) belongs to a shard: they are dealt out in turn, so that all parts are alike. */
export function inShard(variant: number, { index, count }: Shard): boolean {
  return variant % count === index - 1;
}
