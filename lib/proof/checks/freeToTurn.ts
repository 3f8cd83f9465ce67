import type { BodyFindings } from '../bodies.js';
import type { Check } from '../check.js';
import type { MotionFindings, MotionGap } from '../freeToTurn/freeToTurn.js';
import { PHASES } from '../freeToTurn/toothPhases.js';

/**
 * Every body keeps its gap to every other one through the whole motion, as printed and as used.
 * @param bodies for how far meshes may lie from exact teeth
 * @param rolled the least gap that exact teeth come to while they roll, mm; null for one gear by itself
 */
export function freeToTurn({ pairs }: MotionFindings, bodies: BodyFindings, rolled: number | null): Check {
  const worst = pairs.reduce<MotionGap | null>(
    (most, pair) => (most === null || overOf(pair) < overOf(most) ? pair : most),
    null,
  );
  const failing = pairs.filter((pair) => overOf(pair) < 0);
  const nearest = failing.length ? worst : nearestOf(pairs);
  return {
    id: 'free-to-turn',
    holds: failing.length === 0,
    level: 'must',
    value: nearest?.distance ?? null,
    limit: nearest?.limit ?? null,
    unit: 'mm',
    says: [
      nearest ? said(nearest) : 'no body comes near another one through the whole motion',
      ...others(failing, nearest),
      ...ways(pairs),
      ...between(pairs, bodies, rolled),
    ].join('; '),
  };
}

/** How much more than what is accepted, mm; what could not be followed fails. */
function overOf({ distance, limit, whole }: MotionGap): number {
  if (!whole) return Number.NEGATIVE_INFINITY;
  return distance === null ? Number.POSITIVE_INFINITY : distance - limit;
}

function nearestOf(pairs: readonly MotionGap[]): MotionGap | null {
  return pairs.reduce<MotionGap | null>((least, pair) => {
    if (pair.distance === null) return least;
    return least === null || pair.distance < least.distance! ? pair : least;
  }, null);
}

function said(pair: MotionGap): string {
  const [a, b] = pair.between;
  if (!pair.whole) return `${a} and ${b} could not be followed through their motion in steps fine enough`;
  if (pair.distance === 0) return `${a} runs into ${b} ${where(pair)}`;
  return `${a} and ${b} come nearest: ${pair.distance!.toFixed(4)} mm of ${pair.least.toFixed(4)} mm asked, ${where(pair)}`;
}

function where({ between, how, point, turned }: MotionGap): string {
  const [x, y, z] = point.map((value) => value.toFixed(1));
  const radius = Math.hypot(point[0], point[1]).toFixed(1);
  const at = `at (${x}, ${y}, ${z}), ${radius} mm from the axis of the set`;
  if (how === 'printed') return `${at}, as they lie on the bed`;
  if (how === 'together') return `${at}, at every turn`;
  const angle = turned === null ? '' : `, ${between[0]} turned by ${turned.toFixed(1)}°`;
  return `${at}${angle}`;
}

function others(failing: readonly MotionGap[], first: MotionGap | null): string[] {
  const names = failing.filter((pair) => pair !== first).map(({ between }) => between.join(' and '));
  const more = [...new Set(names)].filter((name) => name !== first?.between.join(' and '));
  return more.length ? [`too near each other too: ${more.slice(0, 6).join(', ')}`] : [];
}

/** How many pairs were measured, and how. */
function ways(pairs: readonly MotionGap[]): string[] {
  const count = (how: MotionGap['how']) => pairs.filter((pair) => pair.how === how).length;
  const said = [
    [count('every turn'), 'over every turn'],
    [count('followed'), 'followed through their period'],
    [count('together'), 'that turn together'],
    [count('printed'), 'beside the set on the bed'],
    [count('phases'), `of toothed sides at ${PHASES} phases of a pitch`],
  ] as const;
  const done = said.filter(([n]) => n > 0).map(([n, how]) => `${n} ${how}`);
  return done.length ? [`pairs of unlike bodies measured: ${done.join(', ')}`] : [];
}

/** What bounds the gap of mates at the phases in between. */
function between(pairs: readonly MotionGap[], { bodies }: BodyFindings, rolled: number | null): string[] {
  if (rolled === null || !pairs.some(({ how }) => how === 'phases')) return [];
  const off = bodies
    .flatMap(({ deviation }) => (deviation ? [deviation.worst] : []))
    .sort((a, b) => b - a)
    .slice(0, 2)
    .reduce((sum, worst) => sum + worst, 0);
  return [
    `between the phases exact teeth roll at ${rolled.toFixed(4)} mm or more and two meshes lie within ${off.toFixed(4)} mm of them, so no phase comes below ${(rolled - off).toFixed(4)} mm`,
  ];
}
