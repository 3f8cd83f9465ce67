import { SingleBar } from 'cli-progress';
import type { Outcome } from '../lib/batch/runBatch.js';
import { complain } from './output.js';

/** Columns that the bar leaves for the counts beside it. */
const BESIDE = 40;
/** Narrower terminals get the counts alone. */
const LEAST_BAR = 8;

/** Shows how far a batch is, on stderr: a bar on a terminal, else a line a variant. */
export interface Progress {
  add(outcome: Outcome): void;
  stop(): void;
}

/** @param total variants to come */
export function progressOf(total: number): Progress {
  return process.stderr.isTTY ? bar(total) : lines(total);
}

function lines(total: number): Progress {
  let done = 0;
  return {
    add({ status, row }) {
      const why = row.refusal ? `: ${row.refusal.says[0]}` : '';
      complain(`${++done}/${total} ${status} ${row.name}${why}`);
    },
    stop() {},
  };
}

function bar(total: number): Progress {
  const columns = process.stderr.columns || 80;
  const room = columns - BESIDE;
  const left = columns < BESIDE ? '' : ', {eta_formatted} left';
  const counts = { refused: 0 };
  const single = new SingleBar({
    format: `${room < LEAST_BAR ? '' : '{bar} '}{value}/{total}, {refused} refused${left}`,
    barsize: Math.max(LEAST_BAR, Math.min(room, 40)),
    barCompleteChar: '#',
    barIncompleteChar: '-',
    stream: process.stderr,
    gracefulExit: false,
  });
  single.start(total, 0, counts);
  return {
    add({ status }) {
      if (status === 'refused') counts.refused++;
      single.increment(1, counts);
    },
    stop: () => single.stop(),
  };
}
