import { resolveSpec } from '../lib/spec/resolveSpec.js';
import type { PlanetarySpec, Spec } from '../lib/spec/types.js';

/** A file known to be that of a planetary set. */
export function planetary(spec: Spec): PlanetarySpec {
  if (spec.kind !== 'planetary') throw new Error(`a ${spec.kind}, not a planetary set`);
  return spec;
}

/** A set by its counts, everything else by default unless given; face width 20 mm, module 1.5. */
export function setOf(
  sun: number,
  planets: number,
  ring: number,
  count: number,
  more: object = {},
): PlanetarySpec {
  return resolveSpec({
    kind: 'planetary',
    module: 1.5,
    faceWidth: 20,
    sun: { teeth: sun },
    planets: { teeth: planets, count },
    ring: { teeth: ring },
    ...more,
  });
}

/** The reference set: 15 / 15 / 45 with five planets, herringbone 30°, round 8 mm bore, 5 mm rim. */
export function referenceSet(more: object = {}): PlanetarySpec {
  return setOf(15, 15, 45, 5, {
    sun: { teeth: 15, bore: { shape: 'round', diameter: 8 } },
    ring: { teeth: 45, rim: 5 },
    ...more,
  });
}
