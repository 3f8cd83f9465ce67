import { chordsOf, type Point } from '../stack/contour.js';
import { polar } from '../tooth/polar.js';

/** Points for one hollow, at least. */
const PER_HOLLOW = 16;

/**
 * A circle with hollows around it for fingers to grip: r = R − depth (1 − cos nθ) / 2.
 * @param count hollows; 0 for a plain circle
 * @param inset everything is this much nearer to the axis, mm
 * @param tolerance largest distance of a chord from the curve, about, mm
 */
export function wavyOutline(
  radius: number,
  count: number,
  depth: number,
  tolerance: number,
  inset = 0,
): Point[] {
  const plain = chordsOf(radius, tolerance);
  // The wave bends by depth n² / 2 at its sharpest; chords of angle s miss a curve of that bend by bend s² / 8.
  const waves = Math.sqrt((depth * count * count) / (16 * tolerance)) * Math.PI;
  const points = count ? count * Math.max(PER_HOLLOW, Math.ceil(Math.max(plain, waves) / count)) : plain;
  return Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    return polar(radius - inset - (depth * (1 - Math.cos(count * angle))) / 2, angle);
  });
}
