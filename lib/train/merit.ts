import type { ResolvedWanted } from './planWanted.js';

/** Contact ratio from which more adds nothing to the overall merit: two pairs of teeth always in contact. */
const FULL_ENGAGEMENT = 2;

/** The figures of a row that merits are worked out from. */
export interface Figures {
  engagement: number;
  planets: number;
  opening: { arc: number };
  ratios: { ringHeld: number; carrierHeld: number; sunHeld: number };
  /** mm. */
  outerDiameter: number;
  /** Normal tooth thickness on the reference circle, the gap taken off: of sun or planets, the lesser, mm. */
  toothThickness: number;
}

type Asked = Pick<ResolvedWanted, 'ratio' | 'largest' | 'bed'>;

/** One figure of merit: its formula, and what it comes to; more is better. */
interface Merit {
  /** The formula in words, for help and tables. */
  says: string;
  of(row: Figures, wanted: Asked): number;
}

/**
 * The figures of merit by which rows can be ranked. Rankings of our own, no source: nothing is hidden in them, and
 * each can be worked out from the row and what was asked. Ties are settled by `overall`.
 */
export const merits = {
  /** How well a set answers all that was asked at once, 0 … 1. */
  overall: {
    says: 'engagement / 2 (at most 1) × share of the circle covered by planets × ratio (1 when met, 0.5 at its tolerance) × outer diameter / largest wanted; the last two where wanted',
    of: overall,
  },
  /** Smallest opening between planets first, 0 … 1. */
  opening: {
    says: '1 − opening arc / 360°',
    of: ({ opening }) => 1 - opening.arc / 360,
  },
  /** Nearest to the ratio asked for, 0 … 1. */
  ratio: {
    says: '1 / (1 + |departure from the ratio| / |ratio|)',
    of: (row, wanted) => 1 / (1 + ratioDeparture(row.ratios, wanted) / Math.abs(wanted.ratio?.value ?? 1)),
  },
  /** Largest contact ratio first. */
  engagement: {
    says: 'the lesser transverse contact ratio',
    of: ({ engagement }) => engagement,
  },
  /** Thickest teeth first, mm: the root that bends grows with it. */
  strength: {
    says: 'normal tooth thickness of sun or planets, the lesser, gap taken off, in mm',
    of: ({ toothThickness }) => toothThickness,
  },
  /** Smallest set first, 0 … 1. */
  size: {
    says: '1 − outer diameter / largest wanted (else the bed)',
    of: ({ outerDiameter }, wanted) => 1 - outerDiameter / (wanted.largest ?? wanted.bed),
  },
} as const satisfies Record<string, Merit>;

/** Name of a figure of merit. */
export type By = keyof typeof merits;

/**
 * How well a set answers what was asked, 0 … 1: the product of
 * - engagement / 2, at most 1 (two pairs of teeth always in contact);
 * - the share of the circle that planets cover, 1 − planets × opening arc / 360°, by the widest opening;
 * - where a ratio is wanted, 1 − |departure| / (2 × tolerance): 1 when met exactly, a half at the tolerance;
 * - where an outer diameter or a hole is wanted, outer diameter / the largest wanted.
 */
function overall(row: Figures, wanted: Asked): number {
  const contact = Math.min(1, row.engagement / FULL_ENGAGEMENT);
  const covered = Math.max(0, 1 - (row.planets * row.opening.arc) / 360);
  const size = wanted.largest === null ? 1 : Math.min(1, row.outerDiameter / wanted.largest);
  return contact * covered * ratioMerit(ratioDeparture(row.ratios, wanted), wanted.ratio?.tolerance) * size;
}

/** Departure of a set's ratio from the one wanted, signs aside; 0 when none is wanted. */
export function ratioDeparture(found: Figures['ratios'], { ratio }: Pick<ResolvedWanted, 'ratio'>): number {
  return ratio ? Math.abs(Math.abs(found[`${ratio.held}Held`]) - Math.abs(ratio.value)) : 0;
}

function ratioMerit(departure: number, tolerance = 0): number {
  return tolerance > 0 ? Math.max(0, 1 - departure / (2 * tolerance)) : 1;
}
