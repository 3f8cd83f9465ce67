import { Refusal } from '../../refusal.js';
import { moduleGiven } from '../../spec/moduleGiven.js';
import type { Spec } from '../../spec/types.js';
import type { Check, NamingCheck } from '../check.js';
import type { Change } from './changes.js';
import { isMeshed, meshWays } from './meshWays.js';
import { nearestWorking, type Search } from './nearestWorking.js';
import { nearestSentence, sayWays, withHelp } from './words.js';
import { works, worksWith } from './works.js';

/**
 * A refusal of teeth that cannot be drawn, with values that have been tried: of the parameter itself where one works,
 * else of another one that does, with the others beside.
 */
export function helpedRefusal(spec: Spec, refusal: Refusal): Refusal {
  const [problem, ...rest] = refusal.problems;
  // Only meshes that grow too large have a tolerance refused without an offer.
  const byMesh = problem.parameter === 'tolerance' && problem.nearest.length === 0;
  // Teeth that can be drawn are not what it is about.
  if (!byMesh && (works(spec) || offersWork(spec, refusal))) return refusal;
  const { rule } = problem;
  // Teeth know the normal module alone.
  const given = moduleGiven(spec);
  const parameter = problem.parameter === 'module' ? given.path : problem.parameter;
  const value = problem.parameter === 'module' ? given.value : problem.value;
  const found = nearestWorking(
    spec,
    byMesh ? { ways: meshWays(spec), more: isMeshed } : { first: parameter },
  );
  const own = found.find(isOf(parameter)) ?? found.find((change) => isOf(Object.keys(change)[0])(change));
  if (!own) {
    const help = nearestSentence(found);
    return help
      ? new Refusal([{ ...problem, parameter, value, rule: withHelp(rule, help), nearest: [] }, ...rest])
      : refusal;
  }
  const [[path, offer]] = Object.entries(own);
  const others = sayWays(found.filter((change) => change !== own));
  const why = path === parameter ? rule : `with ${sayWays([{ [parameter]: value }])}: ${rule}`;
  return new Refusal([
    {
      ...problem,
      parameter: path,
      value: path === parameter ? value : valueAt(spec, path),
      rule: others ? `${why}; ${others} would do too` : why,
      nearest: [offer],
    },
    ...rest,
  ]);
}

/** Whether a refusal offers something, and all that it puts first works together. */
function offersWork(spec: Spec, { problems }: Refusal): boolean {
  const offers = problems.map(({ parameter, nearest: [offer] }) => [parameter, offer]);
  if (offers.some(([, offer]) => offer === undefined)) return false;
  return worksWith(spec, Object.fromEntries(offers));
}

/** Whether a change gives another value to one parameter alone. */
function isOf(path: string) {
  return (change: Change) => Object.keys(change).length === 1 && change[path] !== undefined;
}

function valueAt(spec: Spec, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((group, key) => (group as Record<string, unknown> | undefined)?.[key], spec);
}

/**
 * Checks, of which the first that stops the job says what would work; it is the same for the others.
 * @param stops whether a check stops the job
 */
export function helpedChecks<S extends Spec>(
  spec: S,
  checks: readonly NamingCheck[],
  stops: (check: Check) => boolean,
  search: Search<S> = {},
): Check[] {
  const first = checks.findIndex(stops);
  if (first < 0) return [...checks];
  // Sets that a check names itself have been tried too.
  const named = checks.some(({ holds, sets }) => !holds && sets?.length);
  const help = nearestSentence(nearestWorking(spec, { counts: !named, ...search }));
  return checks.map((check, i) =>
    i === first && help ? { ...check, says: withHelp(check.says, help) } : check,
  );
}
