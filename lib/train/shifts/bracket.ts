/** Ends of a narrow interval: `f` is at least zero at `over`, and below zero at `under`. */
export interface Bracket {
  over: number;
  under: number;
}

/** A place and what the function comes to there. */
type End = readonly [x: number, value: number];

/** Every so many steps the interval is halved, whatever the secant says: a bound on the number of steps. */
const HALVE_EVERY = 3;

/**
 * Narrows an interval at whose ends a continuous function differs in sign until it is at most `width` long. Secants
 * find smooth zeros in some six evaluations; steps keep half of `width` from the ends, so that both ends close in.
 * Source: the Illinois method (regula falsi), guarded by bisection.
 */
export function bracket(f: (x: number) => number, one: End, two: End, width: number): Bracket {
  const [first, second] = one[1] >= 0 ? [one, two] : [two, one];
  let [over, atOver] = first;
  let [under, atUnder] = second;
  let last = 0;
  for (let step = 1; Math.abs(over - under) > width; step++) {
    const middle = (over + under) / 2;
    const secant = over + ((under - over) * atOver) / (atOver - atUnder);
    const [least, most] = [Math.min(over, under) + width / 2, Math.max(over, under) - width / 2];
    const guess = step % HALVE_EVERY === 0 || !Number.isFinite(secant) ? middle : secant;
    const x = Math.max(least, Math.min(most, guess));
    const value = f(x);
    const side = value >= 0 ? 1 : -1;
    // The end that stays put counts half from the second time on.
    const weight = side === last ? 0.5 : 1;
    last = side;
    if (side > 0) [over, atOver, atUnder] = [x, value, weight * atUnder];
    else [under, atUnder, atOver] = [x, value, weight * atOver];
  }
  return { over, under };
}
