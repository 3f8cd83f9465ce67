// What a job costs, on a machine that has other work as well.

/**
 * Runs a job.
 * @returns { result, cost: { seconds, megabytes } }: the lesser of the time it took and of the processor time it
 * used, which is less where others wait for the processor too; and the most memory that this process has held so far
 */
export function measured(job) {
  const started = performance.now();
  const before = process.cpuUsage();
  const result = job();
  const { user, system } = process.cpuUsage(before);
  const seconds = Math.min(performance.now() - started, (user + system) / 1000) / 1000;
  // In kilobytes, on every system that Node.js runs on.
  const megabytes = process.resourceUsage().maxRSS / 1024;
  return { result, cost: { seconds: Number(seconds.toFixed(2)), megabytes: Math.round(megabytes) } };
}
