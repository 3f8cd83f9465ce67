/** Least and most value, both included. */
export type Range = readonly [least: number, most: number];

/**
 * The ranges of a parameter file's numbers that others than the schema hold to as well: plan, coupon, trials, advice,
 * offers and help. The schema itself is built from them, so that none of them can come apart. Lengths in mm, angles in
 * degrees, racks and shifts in normal modules; where each is from stands in the schema beside the parameter.
 */
export const ranges = keyed({
  module: [0.2, 20],
  pressureAngle: [14, 30],
  addendum: [0.5, 1.5],
  dedendum: [0.5, 2],
  fillet: [0, 1],
  helixAngle: [0, 45],
  bevelAngle: [30, 60],
  faceWidth: [1, 300],
  /** Between flanks; around pins and lips as well. */
  gap: [0.02, 2],
  gapShare: [0, 1],
  /** Of gears with teeth outside, and of those with teeth inside. */
  teeth: [5, 400],
  ringTeeth: [10, 1000],
  shift: [-1, 1.5],
  ringShift: [-3, 4.5],
  planets: [2, 12],
  /** Wall of a ring outside its roots, and of a bar behind them. */
  rim: [0.4, 100],
  barTeeth: [1, 1000],
  barLength: [1, 2000],
  bore: [0.5, 2000],
  pin: [0.5, 200],
  plateBolt: [0.5, 50],
  plateBolts: [2, 60],
  boss: [2, 500],
  lipReach: [0.1, 50],
  contactRatio: [1, 4],
  tolerance: [0.0005, 0.2],
  nozzle: [0.1, 2],
  layer: [0.02, 1.5],
  bed: [20, 3000],
  growth: [-0.5, 0.5],
  firstLayerGrowth: [0, 1],
  /** Percent. */
  shrinkage: [0, 3],
});

/** The same for features. */
export const featureRanges = keyed({
  screwHole: [0.5, 99],
  screwHead: [1, 100],
  nutFlats: [1, 100],
  nutDepth: [0.5, 100],
  knobDiameter: [3, 500],
  knobHeight: [1, 200],
  crankFlats: [2, 200],
  crankDepth: [1, 200],
  crankHandle: [10, 300],
  /** Finger holes, dimples and pockets. */
  openingDiameter: [1, 500],
  dimpleDepth: [0.2, 100],
  pocketDepth: [0.2, 300],
  gripDepth: [0.2, 50],
  flangeDiameter: [5, 3500],
  flangeThickness: [0.4, 100],
  mountHole: [5, 2500],
  letters: [2, 200],
});

/** The transverse modules that normal ones can come to, mm: m_t = m_n / cos β (ISO 21771). */
export const transverseModules: Range = [
  ranges.module[0],
  Math.ceil((10 * ranges.module[1]) / Math.cos((ranges.helixAngle[1] * Math.PI) / 180)) / 10,
];

/** A larger gap would leave the teeth hardly any engagement. Common practice. */
export const MOST_GAP_PER_MODULE = 0.75;
/** Both bevels together leave at least a fifth of the face: one's share of it. Common practice. */
export const MOST_BEVEL_SHARE = 0.4;
/** Least angle of a helix that is worth the name, degrees. Common practice. */
export const LEAST_HELIX = 1;
/** Largest set and largest part that are ever made, mm: several times any printer's bed. */
export const LARGEST = 2000;

/** Ranges by their keys, each a `Range` and no narrower. */
function keyed<Key extends string>(all: Record<Key, Range>): Readonly<Record<Key, Range>> {
  return all;
}

/** A range in words: `from 0.02 to 2`. */
export function fromTo([least, most]: Range): string {
  return `from ${least} to ${most}`;
}

/** Whether a value is in a range. */
export function isWithin(value: number, [least, most]: Range): boolean {
  return value >= least && value <= most;
}
