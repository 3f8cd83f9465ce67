import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';

/**
 * Where every core has a worker, lets each worker compile its own code at once. V8 would else do so beside it, on cores
 * that are busy with the other workers: code then arrives late, much of it for nothing. Holds for threads that begin after
 * this. What a second core gains is a row of `npm run bench`.
 * @param threads workers of the batch
 */
export function compileInPlace(threads: number): void {
  if (threads > 1 && threads >= availableParallelism()) setFlagsFromString('--no-concurrent-recompilation');
}
