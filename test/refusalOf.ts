import { Refusal } from '../lib/refusal.js';

/** The refusal that a call ends in; any other end fails the test. */
export function refusalOf(make: () => unknown): Refusal {
  try {
    make();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('not refused');
}
