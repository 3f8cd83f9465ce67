import type { TrainBar } from '../fit/train/train.js';
import { radians } from '../tooth/gear.js';

/** Thickness of a bar's tooth at a height, normal section, mm. Source: ISO 53, half the pitch on the datum line. */
export function barThickness({ bar, relief }: TrainBar, height: number): number {
  const alpha = radians(bar.pressureAngle);
  return (Math.PI * bar.module) / 2 - (2 * relief) / Math.cos(alpha) - 2 * height * Math.tan(alpha);
}
