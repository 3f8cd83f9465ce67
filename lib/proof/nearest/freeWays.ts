import { floorThousandth } from '../../spec/nearest.js';
import type { PlanetarySpec } from '../../spec/types.js';
import { just, singly, tried, type Ways } from './changes.js';

/** Shares of the tolerance that are tried. */
const FINER = [0.6, 0.3];

/** What may be changed about a set whose bodies come too near each other while it turns: few, as each is tried by building it. */
export function freeWays({ tolerance, sun, planets, ring }: PlanetarySpec): Ways {
  const finer = FINER.map((share) => floorThousandth(share * tolerance));
  const raised = Object.entries({ sun, planets, ring }).filter(([, { text }]) => text?.style === 'raised');
  const handle = sun.crank?.handle === undefined ? {} : { 'sun.crank.handle': undefined };
  return singly([
    ...(tolerance > LEAST ? [tried('tolerance', finer)] : []),
    ...raised.map(([part]) => just(`${part}.text.style`, { [`${part}.text.style`]: 'sunk' })),
    just('sun.crank.handle', handle),
  ]);
}

/** Meshes finer than this are not tried: they take long, mm. */
const LEAST = 0.004;
