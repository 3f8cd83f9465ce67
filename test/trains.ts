import { resolveSpec } from '../lib/spec/resolveSpec.js';
import type { GearSpec, PairSpec, RackSpec } from '../lib/spec/types.js';

const common = { module: 1.5, faceWidth: 12 };

/** A pair by its teeth, everything else by default unless given; face width 12 mm, module 1.5. */
export function pairOf(pinion: number, wheel: number, more: object = {}): PairSpec {
  return resolveSpec({
    kind: 'pair',
    ...common,
    pinion: { teeth: pinion },
    wheel: { teeth: wheel },
    ...more,
  });
}

/** The same with the wheel around the pinion. */
export function ringPairOf(pinion: number, wheel: number, more: object = {}): PairSpec {
  return pairOf(pinion, wheel, { wheel: { internal: true, teeth: wheel }, ...more });
}

/** A rack and pinion by their teeth. */
export function rackOf(pinion: number, bar: number, more: object = {}): RackSpec {
  return resolveSpec({ kind: 'rack', ...common, pinion: { teeth: pinion }, bar: { teeth: bar }, ...more });
}

/** One gear. */
export function gearOf(gear: object, more: object = {}): GearSpec {
  return resolveSpec({ kind: 'gear', ...common, gear, ...more } as { kind: 'gear' });
}
