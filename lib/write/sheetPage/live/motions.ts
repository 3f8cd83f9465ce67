import type { Sheet } from '../../../proof/sheetTypes.js';
import { speeds } from '../../../train/ratios.js';
import type { LiveMode, LiveMotion } from './liveData.js';

/** The ways to drive what a sheet speaks of; none for a part that has no mate. */
export function modesOf(sheet: Sheet): LiveMode[] {
  const spec = sheet.resolved;
  if (spec.kind !== 'planetary') return [onlyMode(sheet)];
  const teeth = { sunTeeth: spec.sun.teeth, planetTeeth: spec.planets.teeth, ringTeeth: spec.ring.teeth };
  const ways = [
    { label: 'ring', driver: 'sun', known: { sun: 1, ring: 0 } },
    { label: 'planets’ axes', driver: 'sun', known: { sun: 1, carrier: 0 } },
    { label: 'sun', driver: 'ring', known: { ring: 1, sun: 0 } },
  ];
  return ways.map(({ label, driver, known }) => {
    const { sun, carrier, ring, planet } = speeds(teeth, known);
    const motions: Record<string, LiveMotion> = {
      sun: turning(sun),
      ring: turning(ring),
      carrier: turning(carrier),
    };
    for (let i = 1; i <= spec.planets.count; i++)
      motions[`planet-${i}`] = { turns: planet, orbit: carrier, shift: [0, 0] };
    return { label, driver, motions, pitches: (sun - carrier) * spec.sun.teeth };
  });
}

/** A pair, a bar and its pinion or one gear can be driven in one way only. */
function onlyMode({ resolved: spec, train: { ratios } }: Sheet): LiveMode {
  const driver = spec.kind === 'gear' ? 'gear' : 'pinion';
  const motions: Record<string, LiveMotion> = { [driver]: turning(1) };
  if ('pinionDriving' in ratios) motions.wheel = turning(1 / ratios.pinionDriving);
  // The bar lies below the pinion, whose lowest tooth moves to the right when it turns counter-clockwise.
  if ('travelPerTurn' in ratios) motions.bar = { turns: 0, orbit: 0, shift: [ratios.travelPerTurn, 0] };
  const pitches = spec.kind === 'pair' || spec.kind === 'rack' ? spec.pinion.teeth : 0;
  return { label: 'axes', driver, motions, pitches };
}

function turning(turns: number): LiveMotion {
  return { turns, orbit: 0, shift: [0, 0] };
}
