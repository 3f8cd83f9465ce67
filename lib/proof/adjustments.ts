import type { Adjustment } from '../fit/adjustment.js';
import { compensationOf } from '../fit/compensation.js';
import type { FittedTrain } from '../fit/train/fitTrain.js';
import { barSweep } from '../solid/bar/barSweep.js';
import type { CommonSpec } from '../spec/types.js';

/** Differences below this are not told apart in what is printed here, mm. */
const TOLD = 5e-4;

/** What becomes of the file's rounding and bevel on one part. */
interface MadeTooth {
  part: string;
  /** Root rounding as drawn, in the normal section of an external gear, mm. */
  rounding: number;
  /** Depth of the bevels as asked, mm; null where lips decide it. */
  bevel: number | null;
}

/** Roundings and bevels of a train that are not what the file asks for. */
export function toothAdjustments(asked: FittedTrain, drawn: FittedTrain): Adjustment[] {
  const teeth: MadeTooth[] = asked.gears.map(({ part, end }, i) => ({
    part,
    rounding: drawn.gears[i].profile.rounding,
    bevel: end.lips ? null : end.bevelSize,
  }));
  if (asked.bar && drawn.bar)
    teeth.push({
      part: asked.bar.part,
      rounding: drawn.bar.profile.round.radius,
      bevel: barSweep(asked.spec, asked.bar).bevelSize,
    });
  return teeth.flatMap((tooth) => adjusted(asked.spec, tooth));
}

function adjusted(spec: CommonSpec, { part, rounding, bevel }: MadeTooth): Adjustment[] {
  const { growth, scale } = compensationOf(spec);
  const wanted = spec.rack.fillet * spec.module;
  // A root is hollow: walls that stand out make its rounding smaller by as much.
  const made = rounding / scale - growth;
  const found: Adjustment[] = [];
  if (Math.abs(made - wanted) > TOLD) {
    const because = made < wanted ? 'mates' : 'drawing';
    found.push({ part, what: 'roots-rounded', from: wanted, to: made, because });
  }
  if (bevel !== null && bevel < spec.bevel.size - TOLD)
    found.push({ part, what: 'bevels-shallower', from: spec.bevel.size, to: bevel });
  return found;
}
