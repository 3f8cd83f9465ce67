import { WALL_LINES } from '../features/room.js';
import type { CommonSpec, Lips } from '../spec/types.js';

/** What a train is drawn otherwise for, so that it comes out as asked: see `drawnTrain`. */
export interface Compensation {
  /** How far printed walls stand out, mm. */
  growth: number;
  /** How far the first layer stands out beyond them, mm; nothing is drawn otherwise for it. */
  firstLayerGrowth: number;
  /** Percent by which a print is smaller than drawn. */
  shrinkage: number;
  /** Drawn lengths are this many times the printed ones: 1 / (1 − shrinkage / 100). */
  scale: number;
}

/** The compensation that a parameter file asks for. */
export function compensationOf({ printer, filament }: CommonSpec): Compensation {
  const { growth, firstLayerGrowth } = printer;
  const { shrinkage } = filament;
  return { growth, firstLayerGrowth, shrinkage, scale: 1 / (1 - shrinkage / 100) };
}

/** Normal distance between neighbouring flanks as drawn, mm. */
export function drawnGap(spec: CommonSpec): number {
  const { growth, scale } = compensationOf(spec);
  return (spec.fit.gap + 2 * growth) * scale;
}

/** Two lines of wall as they are drawn: both sides of them are set back. */
export function drawnWall(spec: CommonSpec): number {
  const { growth, scale } = compensationOf(spec);
  return (WALL_LINES * spec.printer.lineWidth - 2 * growth) * scale;
}

/**
 * What a file of any kind would say of its teeth, faces and gap to ask for what is drawn, were nothing to be
 * compensated: everything larger by the shrinkage, rounding and gap set back by the growth.
 */
export function drawnCommon(spec: CommonSpec) {
  const { growth, scale } = compensationOf(spec);
  const { module, rack, faceWidth, bevel, fit, printer, filament } = spec;
  const gap = fit.gap + 2 * growth;
  return {
    module: module * scale,
    rack: { ...rack, fillet: Math.max(0, rack.fillet + growth / module) },
    faceWidth: faceWidth * scale,
    bevel: { ...bevel, size: bevel.size * scale },
    // Every flank is set back by the growth, whatever its share of the gap.
    fit: { gap: gap * scale, gapShare: (fit.gap * fit.gapShare + growth) / gap },
    printer: { ...printer, growth: 0 },
    filament: { ...filament, shrinkage: 0 },
  };
}

/** Lip and bevel are both set back; a root circle, and so the foot of a lip, goes back as far as the lip. */
export function drawnLips({ on, gap, reach }: Lips, growth: number, scale: number): Lips {
  return { on, gap: (gap + 2 * growth) * scale, ...(reach !== undefined && { reach: reach * scale }) };
}
