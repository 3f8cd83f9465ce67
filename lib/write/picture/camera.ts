import type { Part } from '../../solid/mesh.js';
import { radians } from '../../tooth/gear.js';

type Vector = readonly [number, number, number];

/**
 * Where an eye infinitely far off looks from: no foreshortening, so parallel edges stay parallel and sizes can be
 * compared. A point p of the model comes to the pixel (x + scale p·right, y − scale p·up), at the depth p·toward.
 */
export interface Camera {
  right: Vector;
  up: Vector;
  /** To the eye. */
  toward: Vector;
  /** Pixels for each mm. */
  scale: number;
  /** Pixel of the model's origin. */
  x: number;
  y: number;
}

/** Share of the picture left free at each edge. */
const MARGIN = 0.05;

/**
 * A camera that shows all parts as large as the picture allows.
 * @param azimuth where the eye stands, degrees counter-clockwise from +x seen from above
 * @param elevation how high it stands above the bed, degrees, above 0 to 90
 */
export function cameraFor(
  parts: readonly Part[],
  {
    width,
    height,
    azimuth,
    elevation,
  }: { width: number; height: number; azimuth: number; elevation: number },
): Camera {
  const [a, e] = [radians(azimuth), radians(elevation)];
  const right: Vector = [-Math.sin(a), Math.cos(a), 0];
  const up: Vector = [-Math.sin(e) * Math.cos(a), -Math.sin(e) * Math.sin(a), Math.cos(e)];
  const toward: Vector = [Math.cos(e) * Math.cos(a), Math.cos(e) * Math.sin(a), Math.sin(e)];
  const [across, along] = [extent(parts, right), extent(parts, up)];
  const room = 1 - 2 * MARGIN;
  const scale = Math.min(
    (room * width) / (across.most - across.least),
    (room * height) / (along.most - along.least),
  );
  return {
    right,
    up,
    toward,
    scale,
    x: width / 2 - (scale * (across.least + across.most)) / 2,
    y: height / 2 + (scale * (along.least + along.most)) / 2,
  };
}

/** The same view on a picture so many times as large. */
export function enlarged(camera: Camera, times: number): Camera {
  return { ...camera, scale: times * camera.scale, x: times * camera.x, y: times * camera.y };
}

function extent(parts: readonly Part[], [dx, dy, dz]: Vector): { least: number; most: number } {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { mesh } of parts)
    for (let i = 0; i < mesh.positions.length; i += 3) {
      const at = dx * mesh.positions[i] + dy * mesh.positions[i + 1] + dz * mesh.positions[i + 2];
      if (at < least) least = at;
      if (at > most) most = at;
    }
  return { least, most };
}
