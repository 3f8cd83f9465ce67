import { refuse } from '../refusal.js';
import type { Part } from '../solid/mesh.js';
import { type Colour, partColour } from '../solid/partColour.js';
import { type Camera, cameraFor, enlarged } from './picture/camera.js';
import { edges } from './picture/edges.js';
import { facetsOf } from './picture/facets.js';
import { occlusion } from './picture/occlusion.js';
import { encodePng } from './picture/png.js';
import { type CuttingPlane, rasterise } from './picture/raster.js';
import { separated } from './picture/separated.js';
import { lightOn, type Surface, surfaceSeen } from './picture/shade.js';

import { LEAST_SIDE, MOST_SIDE, usualSize } from './pictureSize.js';

/** How parts are shown. */
export interface PictureOptions {
  /** Pixels, 16 to 4096 [1200]. */
  width?: number;
  /** Pixels, 16 to 4096 [900]. */
  height?: number;
  /** Where the eye stands, degrees counter-clockwise from +x seen from above [-65; 65 where there is a bar, to see its teeth]. */
  azimuth?: number;
  /** How high it stands above the bed, degrees, 5 to 90 [42]. */
  elevation?: number;
  /** What lies beyond this plane is cut away: points p with p·normal > offset (mm) [nothing]. */
  section?: CuttingPlane;
  /** Lift kinds of parts out of one another, the widest one staying on the bed [false]. */
  separated?: boolean;
}

/** Each pixel is the mean of so many by so many. */
const FINER = 2;
/** How far neighbours shade each other, share of the picture's width. */
const REACH = 0.028;

const PAPER: Colour = [1, 1, 1];
const INK: Colour = [0.1, 0.1, 0.12];
/** How much of the ink an edge carries. */
const DARKNESS = 0.72;

/**
 * A shaded picture of parts as a PNG file: from above at an angle, without foreshortening, on white, each kind of part
 * in its colour, edges drawn. Pure and synchronous; the same bytes for the same input.
 * @param parts at least one, in the place where they are printed, bed at z = 0
 * @throws Refusal for no part at all or for options out of range
 * @example writeFileSync('set.png', renderPicture(buildSet(spec), { width: 800, height: 600 }))
 */
export function renderPicture(parts: readonly Part[], options: PictureOptions = {}): Uint8Array {
  const {
    width = usualSize.width,
    height = usualSize.height,
    azimuth = usualAzimuth(parts),
    elevation = 42,
    section,
  } = options;
  if (!parts.length) refuse('wrong-count', 'parts', [], 'a picture shows at least one part');
  inRange('width', width, LEAST_SIDE, MOST_SIDE);
  inRange('height', height, LEAST_SIDE, MOST_SIDE);
  inRange('azimuth', azimuth, -360, 360);
  inRange('elevation', elevation, 5, 90);
  const [fullWidth, fullHeight] = [Math.round(width), Math.round(height)];
  const shown = options.separated ? separated(parts) : parts;
  const camera = cameraFor(shown, { width: fullWidth, height: fullHeight, azimuth, elevation });
  const fine = enlarged(camera, FINER);
  const facets = facetsOf(shown);
  const size = { width: FINER * fullWidth, height: FINER * fullHeight };
  const surface = surfaceSeen(rasterise(shown, facets, fine, size, section), facets, fine, section);
  const colours = shown.map(({ name }) => partColour(name));
  return encodePng({ width: fullWidth, height: fullHeight, rgb: painted(surface, colours, fine) });
}

/** A bar lies behind its pinion, seen from where its teeth look to. */
function usualAzimuth(parts: readonly Part[]): number {
  return parts.some(({ name }) => name === 'bar') ? 65 : -65;
}

function inRange(parameter: string, value: number, least: number, most: number): void {
  if (value >= least && value <= most) return;
  const nearest = Number.isFinite(value) ? [Math.min(most, Math.max(least, value))] : [];
  refuse('out-of-range', parameter, value, `must be from ${least} to ${most}`, nearest);
}

/** Red, green, blue of every pixel: brightness and edges of the fine pixels in it, averaged. */
function painted(surface: Surface, colours: readonly Colour[], { scale }: Camera): Uint8Array {
  const { width } = surface;
  const shade = occlusion(surface, FINER, Math.max(3, REACH * width), scale);
  const line = edges(surface, scale);
  const rgb = new Uint8Array(3 * shade.length);
  // One colour more for no part at all: part −1.
  const flat = Float64Array.from([PAPER, ...colours].flat());
  const sums = new Float32Array(3);
  const across = width / FINER;
  for (let pixel = 0; pixel < shade.length; pixel++) {
    const corner = FINER * (Math.floor(pixel / across) * width + (pixel % across));
    sums.fill(0);
    for (let k = 0; k < FINER * FINER; k++)
      addFinePixel(
        surface,
        corner + Math.floor(k / FINER) * width + (k % FINER),
        shade[pixel],
        line,
        flat,
        sums,
      );
    for (let channel = 0; channel < 3; channel++)
      rgb[3 * pixel + channel] = Math.round((255 * sums[channel]) / (FINER * FINER));
  }
  return rgb;
}

/** Adds red, green, blue of a fine pixel. */
function addFinePixel(
  surface: Surface,
  at: number,
  hidden: number,
  line: Uint8Array,
  colours: Float64Array,
  sums: Float32Array,
): void {
  const colour = 3 * (surface.part[at] + 1);
  const bright = brightness(surface, at, hidden);
  const ink = line[at] ? DARKNESS : 0;
  for (let channel = 0; channel < 3; channel++)
    sums[channel] += (1 - ink) * Math.min(1, colours[colour + channel] * bright) + ink * INK[channel];
}

/** So many steps from dark to bright: too fine to be seen, coarse enough to pack well. */
const SHADES = 80;

/** A cut face is flat and bright, so that it is told from the parts' own faces. */
function brightness(surface: Surface, at: number, hidden: number): number {
  if (surface.cut[at]) return 1.05;
  const open = 1 - 0.75 * hidden;
  const bright = surface.part[at] < 0 ? open : open * lightOn(surface, at);
  return Math.round(SHADES * bright) / SHADES;
}
