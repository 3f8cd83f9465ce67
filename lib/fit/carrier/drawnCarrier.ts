import { drawnBore } from '../../features/bore.js';
import type { Boss, Carrier, PlanetarySpec } from '../../spec/types.js';

/**
 * A carrier as drawn: walls set back by the growth, everything larger by the scale. Plates and the gaps over and under
 * them stay whole layers, which a slicer makes of them anyway.
 */
export function drawnCarrier(
  carrier: PlanetarySpec['carrier'],
  growth: number,
  scale: number,
): PlanetarySpec['carrier'] {
  if (carrier === 'none') return carrier;
  const shaft = (size: number) => (size - 2 * growth) * scale;
  const hole = (size: number) => (size + 2 * growth) * scale;
  const { pin, bolts } = carrier;
  const drawn: Carrier = {
    ...carrier,
    gap: hole(carrier.gap),
    boss: drawnBoss(carrier.boss, growth, scale),
  };
  // The cones of a pin keep their depth, as both of its radii are set back.
  if (pin) drawn.pin = { ...pin, diameter: shaft(pin.diameter), depth: pin.depth * scale };
  if (bolts !== 'none')
    drawn.bolts = {
      ...bolts,
      diameter: hole(bolts.diameter),
      ...(bolts.circle !== undefined && { circle: bolts.circle * scale }),
    };
  return drawn;
}

/** What stands is drawn like an opening whose walls grow the other way. */
function drawnBoss(boss: Boss, growth: number, scale: number): Boss {
  if (boss.shape === 'none') return boss;
  return { ...drawnBore(boss, { growth: -growth, scale }), height: boss.height * scale };
}
