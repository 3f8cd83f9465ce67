import type { Sheet } from '../../../proof/sheetTypes.js';
import { speeds } from '../../../train/ratios.js';
import type { LiveMode, LiveMotion } from './liveData.js';

/** The ways to drive what a sheet speaks of; none for a part that has no mate. */
export function modesOf(sheet: Sheet): LiveMode[] {
  const spec = sheet.resolved;
  if (spec.kind !== 'planetary') return [];
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

function turning(turns: number): LiveMotion {
  return { turns, orbit: 0, shift: [0, 0] };
}
