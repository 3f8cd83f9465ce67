/** One change of a gear's or a bar's teeth against what the file's numbers alone would make. Lengths in mm. */
export type Adjustment = {
  /** Which part: sun, planet, ring, pinion, wheel, bar or gear. */
  part: string;
  /** Teeth of the smallest mate that a gear by itself is made for. */
  mateTeeth?: number;
} & (
  | { what: 'tips-shortened' | 'roots-deepened'; by: number }
  /** To where the involute of the part itself or of its mate begins. */
  | { what: 'tips-cut-back'; by: number; involuteOf: string }
  | { what: 'roots-rounded'; from: number; to: number; because: 'mates' | 'drawing' }
  | { what: 'bevels-shallower'; from: number; to: number }
);

/** The sentences of a sheet, each once. */
export function sentences(adjustments: readonly Adjustment[]): string[] {
  return [...new Set(adjustments.map(says))];
}

/** The change in one sentence, with the figure made and the one wanted. */
function says(one: Adjustment): string {
  const mate = one.mateTeeth === undefined ? '' : `, for a mate of ${one.mateTeeth} teeth or more`;
  return changeOf(one) + mate;
}

function changeOf(one: Adjustment): string {
  const { part } = one;
  switch (one.what) {
    case 'tips-shortened':
      return `tips of the ${part} shortened by ${mm(one.by)} to keep the rack's bottom clearance`;
    case 'roots-deepened':
      return `roots of the ${part} deepened by ${mm(one.by)} so that its mates' tips keep the gap`;
    case 'tips-cut-back': {
      const whose = one.involuteOf === part ? 'its own' : `the ${one.involuteOf}'s`;
      return `tips of the ${part} cut back by ${mm(one.by)} to where ${whose} involute begins (involute interference)`;
    }
    case 'roots-rounded':
      return `roots of the ${part} rounded with ${mm(one.to)} in place of ${mm(one.from)} (rack.fillet): ${ROUNDED[one.because]}`;
    case 'bevels-shallower':
      return `bevels of the ${part} ${mm(one.to)} deep in place of ${mm(one.from)} (bevel.size): deeper ones would leave no flank in the end face`;
  }
}

const ROUNDED = {
  mates: "what its mates' tips and the tooth space leave room for",
  drawing: 'sharper ones cannot be drawn',
};

function mm(length: number): string {
  return `${length.toFixed(3)} mm`;
}
