// How things are timed: medians, in one process or in one of their own.
import { spawnSync } from 'node:child_process';

/** Median of several runs after one that warms up, ms. */
export function median(run, runs = 7) {
  return medians([run], runs)[0];
}

/** Medians of several things that take turns, so that whatever else the machine does falls on all of them, ms. */
export function medians(all, runs = 7) {
  for (const run of all) run();
  const times = all.map(() => []);
  for (let i = 0; i < runs; i++)
    all.forEach((run, k) => {
      const started = performance.now();
      run();
      times[k].push(performance.now() - started);
    });
  return times.map(middle);
}

/** The median. */
export function middle(values) {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}

/** Runs code in a process of its own; what it returns, with the process's peak memory (MB) and its whole time (ms). */
export function alone(code) {
  const program = `const run = async () => { ${code} };
run().then((result) => console.log(JSON.stringify({ result, memory: process.resourceUsage().maxRSS / 1024 })));`;
  const started = performance.now();
  const { stdout, stderr, status } = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  if (status !== 0) throw new Error(stderr);
  return { ...JSON.parse(stdout.trim().split('\n').at(-1)), whole: performance.now() - started };
}
