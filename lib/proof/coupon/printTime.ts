import type { Part } from '../../solid/mesh.js';
import type { CommonSpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import { meshArea, meshVolume } from '../mesh/volume.js';

/** How long a print takes, roughly, and how that was estimated. */
export interface PrintTime {
  minutes: number;
  /** Of all parts, and what of it is extruded, mm³. */
  volume: number;
  extruded: number;
  /** mm³/s. */
  flow: number;
  /** In one sentence. */
  how: string;
}

/** Shells of so many lines, and the share of what is inside them that infill fills. Common practice, no source. */
const SHELL_LINES = 2;
const INFILL = 0.2;
/** Speed of the nozzle on small parts, mm/s. Common practice, no source. */
const SPEED = 60;
/** Share of the time that is added for travel, slow first layers and cooling. Common practice, no source. */
const IDLE = 0.15;
/** A coupon is to print in about an hour, minutes. */
const LIMIT = 60;

/**
 * Time to print, estimated as the extruded volume over the flow. Extruded is a shell under the whole surface and the
 * infill inside it. Common practice, no source: no more than a rough figure; slicers know better.
 * @param flow mm³/s [line width × layer × 60 mm/s]
 */
export function printTime(
  parts: readonly Part[],
  { printer: { lineWidth, layer } }: CommonSpec,
  flow = lineWidth * layer * SPEED,
): PrintTime {
  let [volume, extruded] = [0, 0];
  for (const { mesh } of parts) {
    const whole = meshVolume(mesh);
    const shell = Math.min(whole, meshArea(mesh) * SHELL_LINES * lineWidth);
    volume += whole;
    extruded += shell + INFILL * (whole - shell);
  }
  return {
    minutes: ((1 + IDLE) * extruded) / flow / 60,
    volume,
    extruded,
    flow,
    how:
      `${(extruded / 1000).toFixed(1)} cm³ extruded (shells of ${SHELL_LINES} lines, ${100 * INFILL} % infill) at a flow of ${flow.toFixed(1)} mm³/s, ` +
      `${100 * IDLE} % added for travel and cooling: common practice, no source; your slicer knows better`,
  };
}

/** Whether it prints in about an hour. @param count of stations */
export function printTimeCheck({ minutes, how }: PrintTime, count: number): Check {
  const holds = minutes <= LIMIT;
  const fewer = Math.floor((count * LIMIT) / minutes);
  return {
    id: 'print-time',
    holds,
    level: 'should',
    value: minutes,
    limit: LIMIT,
    unit: 'min',
    says:
      `about ${minutes.toFixed(0)} minutes: ${how}` +
      (holds
        ? ''
        : fewer >= 2
          ? `; ${fewer} gaps would take about an hour`
          : '; such teeth take longer than an hour even at two gaps: a smaller module is quicker'),
  };
}
