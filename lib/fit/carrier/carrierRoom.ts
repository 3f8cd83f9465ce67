import { refuse } from '../../refusal.js';
import { floorThousandth } from '../../spec/nearest.js';
import { ranges } from '../../spec/ranges.js';
import type { Carrier, PlanetarySpec } from '../../spec/types.js';
import { boreReach } from './pinShape.js';
import { type Opening, postIn } from './postShape.js';

const LEAST_PIN = ranges.pin[0];
const LEAST_GAP = ranges.gap[0];

/**
 * A pin and its bore leave two lines of wall inside the planets' root circle.
 * @throws Refusal with the largest pin that does
 */
export function pinProblem(
  { printer, planets }: PlanetarySpec,
  { pin, gap }: Carrier,
  rootRadius: number,
  wall: number,
): void {
  if (!pin) return;
  const over = boreReach(pin, gap) + wall - rootRadius;
  if (over <= 1e-9) return;
  const most = floorThousandth(pin.diameter - 2 * over);
  const least = Math.max(LEAST_PIN, pin.form === 'straight' ? 0 : 2 * (pin.depth + printer.lineWidth));
  const rule = `its bore must leave two lines of wall inside the planets' root circle, ${(2 * rootRadius).toFixed(2)} mm across`;
  if (most >= least) refuse('carrier-no-room', 'carrier.pin.diameter', pin.diameter, rule, [most]);
  if (pin.form !== 'straight' && most >= LEAST_PIN)
    refuse('carrier-no-room', 'carrier.pin.form', pin.form, `${rule}: with these cones no pin does`, [
      'straight',
    ]);
  refuse('carrier-no-room', 'planets.teeth', planets.teeth, 'leaves no room for a pin: a cage has none', []);
}

/**
 * Posts find no room between the planets.
 * @throws Refusal, always, with the largest gap that leaves room, or without an offer where none does
 */
export function postProblem(
  carrier: Carrier,
  openings: readonly Opening[],
  wall: number,
  cut: number,
): never {
  const fits = (gap: number) => openings.every((opening) => postIn(opening, gap, wall, cut) !== null);
  const rule = `leaves no room for posts two lines thick between planets, sun and ring`;
  for (let gap = Math.floor(100 * carrier.gap - 1) / 100; gap >= LEAST_GAP; gap -= 0.01)
    if (fits(gap)) refuse('carrier-no-room', 'carrier.gap', carrier.gap, rule, [Number(gap.toFixed(2))]);
  refuse('carrier-no-room', 'carrier.form', carrier.form, rule, ['pins']);
}
