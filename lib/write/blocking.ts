import type { Check } from '../proof/check.js';

/**
 * The checks that stop a job: failing ones of level `must`, and with `strict` those of level `should` too,
 * the former first.
 */
export function blockingChecks(checks: readonly Check[], strict: boolean): Check[] {
  const failing = (level: Check['level']) => checks.filter((check) => !check.holds && check.level === level);
  return [...failing('must'), ...(strict ? failing('should') : [])];
}
