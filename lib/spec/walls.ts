import { boreWidth } from '../features/bore.js';
import { leftOf } from '../features/grip.js';
import { openingsIn } from '../features/through.js';
import { barOf, gearsOf } from './kinds.js';
import type { Bore, Spec } from './types.js';

/** Walls whose thickness a file gives: rims of rings where scallops leave them thinnest, the backing of a bar; mm. */
export function wallsOf(spec: Spec): number[] {
  const rims = gearsOf(spec).flatMap((gear) => (gear.internal ? [leftOf(gear.rim, gear)] : []));
  return [...rims, ...(barOf(spec) ? [barOf(spec)!.backing] : [])];
}

/** Widths of the openings that a file gives, mm. */
export function openingsOf(spec: Spec): number[] {
  return gearsOf(spec).flatMap((gear) => [...(gear.internal ? [] : widthOf(gear.bore)), ...openingsIn(gear)]);
}

function widthOf(bore: Bore): number[] {
  return bore.shape === 'none' ? [] : [boreWidth(bore)];
}
