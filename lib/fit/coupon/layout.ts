import type { CommonSpec } from '../../spec/types.js';
import { type Compensation, compensationOf } from '../compensation.js';
import { LABEL, type Stations, wallClearance } from './stations.js';

/** x and y, mm. */
type Place = readonly [number, number];

/** Where everything of a coupon lies on the bed, as drawn. Lengths in mm. */
export interface CouponLayout {
  /** Corners of the frame's outline, counter-clockwise. */
  frame: Place[];
  /** Height of frame and pinions. */
  height: number;
  /** For each station the place of its pinion's axis. */
  axes: Place[];
  /** Its slot, about that axis: x of both ends, y of the smooth wall. */
  slots: { ends: [number, number]; smooth: number }[];
  /** The middle of each number's foot line. */
  labels: Place[];
  /** Least wall between two slots or beside one, and from a slot's roots to the next slot. */
  walls: { side: number; backing: number };
  gauge: Gauge;
}

/** A loose piece to put calipers to: a bar with two known sides and a round hole. As drawn, mm. */
export interface Gauge {
  /** Lower left corner. */
  at: Place;
  length: number;
  width: number;
  height: number;
  /** Diameter of the hole. */
  hole: number;
  /** How far edges are cut back at both faces, so that no first layer is between the jaws. */
  bevel: number;
}

/** The gauge's sizes as they should be on the print, mm. */
export const GAUGE = { length: 30, width: 16, hole: 10, height: 2.4, bevel: 0.6 } as const;
/** Least wall of the frame between slots, in line widths. */
const SIDE_WALL = 4;
/** Distance of the gauge from the frame, mm. */
const APART = 4;

/**
 * The layout as drawn: stations in rows, the smallest gap first, from the upper left, as one reads.
 * @param compensation what is drawn otherwise [as the file asks]
 */
export function couponLayout(
  { stations }: Pick<Stations, 'stations'>,
  compensation: Pick<Compensation, 'growth' | 'scale'> = compensationOf(stations[0].spec),
): CouponLayout {
  const { spec } = stations[0];
  const { growth, scale } = compensation;
  const side = Math.ceil(SIDE_WALL * spec.printer.lineWidth * 10) / 10;
  const bars = stations.map(({ asked }) => asked.bar!);
  const { backing } = bars[0];
  const slots = stations.map(({ gap, asked }) => {
    const [low, high] = asked.bar!.ends;
    return { low, high, smooth: asked.gears[0].radii.tip + wallClearance(gap) };
  });
  const deepest = Math.min(...bars.map(({ datum, root }) => datum + root));
  const highest = Math.max(...slots.map(({ smooth }) => smooth));
  const [left] = bars[0].ends;
  const cell = {
    width: Math.max(...slots.map(({ low, high }) => high - low)) + side,
    height: highest - deepest + backing,
  };
  const count = stations.length;
  const columns = columnsFor(count, cell);
  const rows = Math.ceil(count / columns);
  const lastRow = count - (rows - 1) * columns;
  const cellAt = (i: number): Place => [
    (i % columns) * cell.width + side,
    (rows - 1 - Math.floor(i / columns)) * cell.height,
  ];
  const draw = ([x, y]: Place): Place => [x * scale, y * scale];
  const axes = stations.map((_, i): Place => {
    const [x, y] = cellAt(i);
    return [x - left, y + backing - deepest];
  });
  return {
    frame: outline(columns, rows, lastRow, cell, side, growth).map(draw),
    height: spec.faceWidth * scale,
    axes: axes.map(draw),
    slots: slots.map(({ low, high, smooth }) => ({
      ends: [(low - growth) * scale, (high + growth) * scale],
      smooth: (smooth + growth) * scale,
    })),
    labels: axes.map(([x, y], i) =>
      draw([x + (slots[i].low + slots[i].high) / 2, y + deepest - (backing + LABEL.size) / 2]),
    ),
    walls: { side: (side - 2 * growth) * scale, backing: (backing - 2 * growth) * scale },
    gauge: gaugeAt(spec, compensation, gaugePlace(columns, rows, lastRow, cell, side)),
  };
}

/** The number of columns that makes the plate most nearly square. */
function columnsFor(count: number, cell: { width: number; height: number }): number {
  let best = 1;
  let least = Number.POSITIVE_INFINITY;
  for (let columns = 1; columns <= count; columns++) {
    const sides = [columns * cell.width, Math.ceil(count / columns) * cell.height];
    const spare = columns * Math.ceil(count / columns) - count;
    const longest = Math.max(...sides) + spare * 1e-6;
    if (longest < least) [best, least] = [columns, longest];
  }
  return best;
}

/** A rectangle, or one without its lower right corner where the last row is not full. */
function outline(
  columns: number,
  rows: number,
  lastRow: number,
  cell: { width: number; height: number },
  side: number,
  growth: number,
): Place[] {
  const [low, bottom] = [growth, growth];
  const right = (n: number) => n * cell.width + side - growth;
  const top = rows * cell.height + side - growth;
  if (lastRow === columns)
    return [
      [low, bottom],
      [right(columns), bottom],
      [right(columns), top],
      [low, top],
    ];
  const step = cell.height + growth;
  return [
    [low, bottom],
    [right(lastRow), bottom],
    [right(lastRow), step],
    [right(columns), step],
    [right(columns), top],
    [low, top],
  ];
}

function gaugePlace(
  columns: number,
  rows: number,
  lastRow: number,
  cell: { width: number; height: number },
  side: number,
): Place {
  if (lastRow === columns || rows === 1) return [columns * cell.width + side + APART, 0];
  return [lastRow * cell.width + side + APART, cell.height - APART - GAUGE.width];
}

function gaugeAt(
  spec: CommonSpec,
  { growth, scale }: Pick<Compensation, 'growth' | 'scale'>,
  at: Place,
): Gauge {
  const { layer } = spec.printer;
  return {
    at: [at[0] * scale, at[1] * scale],
    length: (GAUGE.length - 2 * growth) * scale,
    width: (GAUGE.width - 2 * growth) * scale,
    hole: (GAUGE.hole + 2 * growth) * scale,
    height: Math.ceil(GAUGE.height / layer - 1e-9) * layer * scale,
    bevel: GAUGE.bevel * scale,
  };
}
