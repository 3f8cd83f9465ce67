import { refuse } from '../refusal.js';
import { plainReason } from './plainReason.js';

/**
 * Does work that writes; what the file system says against it becomes a refusal in plain words.
 * @param parameter what gave the path
 * @throws Refusal
 */
export async function saying<T>(parameter: string, path: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const reason = plainReason(error);
    if (reason) refuse('not-writable', parameter, path, `cannot be written: ${reason}`);
    throw error;
  }
}
