import type { PlacedBar } from '../../fit/train/fitTrain.js';
import { halfThicknessAt } from '../../tooth/bar.js';
import { fillPlane, reversed } from '../cap.js';
import type { Mesh } from '../mesh.js';
import { type BarSweep, leanAt } from './barSweep.js';

/** Vertices of one line of the bar, upward, one for each level. */
export type Column = number[];

/** A bar's mesh while it is being built: once around its outline, counter-clockwise from above. */
export interface BarDraft {
  /** An upright line. */
  standing(x: number, y: number): Column;
  /** A line that leans with the teeth; x at z = 0. */
  leaning(x: number, y: number): Column;
  /** The wall between two lines; the first one joins the outlines of the end faces. Returns the second. */
  strip(from: Column, to: Column): Column;
  /** Flanks, tip and bevels of the tooth whose middle is at x, between the lines where its straight flanks end. */
  tooth(middle: number, right: Column, left: Column): void;
  /** The body, its end faces filled. */
  mesh(): Mesh;
  /** What was drawn so far without end faces: its outlines at both ends, counter-clockwise or (a slot) clockwise. */
  open(): { positions: number[]; triangles: number[]; bottom: number[]; top: number[] };
}

/** The tip's edge on one side: its ends in the end faces, cut back by the bevels, and its part at full height. */
interface TipLine {
  bottom: number;
  top: number;
  inner: Column;
}

/** Begins a bar. Levels are its two ends, and the middle of a herringbone. */
export function barDraft({ profile, datum }: PlacedBar, sweep: BarSweep): BarDraft {
  const { form, faceWidth, bevelSize, bevelAngle } = sweep;
  const levels = form === 'herringbone' ? [0, faceWidth / 2, faceWidth] : [0, faceWidth];
  const last = levels.length - 1;
  const positions: number[] = [];
  const triangles: number[] = [];
  const loops = { bottom: [] as number[], top: [] as number[] };

  const vertex = (x: number, y: number, z: number) => positions.push(x, y, z) / 3 - 1;
  /** A plane convex face, its corners counter-clockwise from outside. */
  const fan = (corners: readonly number[]) => {
    for (let i = 2; i < corners.length; i++) triangles.push(corners[0], corners[i - 1], corners[i]);
  };
  const tipLine = (middle: number, side: 1 | -1): TipLine => {
    const at = (v: number, z: number) => {
      const u = halfThicknessAt(profile, v) / Math.cos(profile.helixAngle);
      return vertex(middle + side * u + leanAt(sweep, z), datum + v, z);
    };
    const height = bevelSize * Math.tan(bevelAngle);
    const inner = levels.map((z, i) =>
      at(profile.tip, i === 0 ? height : i === last ? faceWidth - height : z),
    );
    if (bevelSize === 0) return { bottom: inner[0], top: inner[last], inner };
    const cut = profile.tip - bevelSize;
    return { bottom: at(cut, 0), top: at(cut, faceWidth), inner };
  };
  /** The part of a tip's edge between two neighbouring levels, upward. */
  const edge = ({ bottom, top, inner }: TipLine, i: number) =>
    distinct([...(i === 1 ? [bottom] : []), inner[i - 1], inner[i], ...(i === last ? [top] : [])]);

  return {
    standing: (x, y) => levels.map((z) => vertex(x, y, z)),
    leaning: (x, y) => levels.map((z) => vertex(x + leanAt(sweep, z), y, z)),
    strip(from, to) {
      for (let i = 1; i <= last; i++) fan([from[i - 1], to[i - 1], to[i], from[i]]);
      loops.bottom.push(from[0]);
      loops.top.push(from[last]);
      return to;
    },
    tooth(middle, right, left) {
      const [up, down] = [tipLine(middle, 1), tipLine(middle, -1)];
      loops.bottom.push(right[0], up.bottom, down.bottom);
      loops.top.push(right[last], up.top, down.top);
      for (let i = 1; i <= last; i++) {
        fan([right[i - 1], ...edge(up, i), right[i]]);
        fan([left[i - 1], left[i], ...edge(down, i).toReversed()]);
        fan([up.inner[i - 1], down.inner[i - 1], down.inner[i], up.inner[i]]);
      }
      if (bevelSize === 0) return;
      fan([up.bottom, down.bottom, down.inner[0], up.inner[0]]);
      fan([up.inner[last], down.inner[last], down.top, up.top]);
    },
    mesh() {
      const all = Float64Array.from(positions);
      const ends = [...reversed(fillPlane([loops.bottom], all)), ...fillPlane([loops.top], all)];
      return { positions: all, triangles: Uint32Array.from([...triangles, ...ends]) };
    },
    open: () => ({ positions, triangles, ...loops }),
  };
}

function distinct(ids: readonly number[]): number[] {
  return ids.filter((id, i) => i === 0 || id !== ids[i - 1]);
}
