import { type Problem, Refusal } from '../refusal.js';
import { makeVariant, type VariantResult, type VariantTask } from './makeVariant.js';

/** What a worker answers: a result, or the problems of a folder that cannot be written. */
export type Answer = VariantResult | { problems: readonly [Problem, ...Problem[]] };

/** The entry of each worker. Problems are handed over as data, since errors lose theirs between threads. */
export default async function work(task: VariantTask): Promise<Answer> {
  try {
    return await makeVariant(task);
  } catch (error) {
    if (error instanceof Refusal) return { problems: error.problems };
    throw error;
  }
}
