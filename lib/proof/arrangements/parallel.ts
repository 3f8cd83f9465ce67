import type { Train } from '../../fit/train/train.js';
import type { TrainSpec } from '../../spec/types.js';
import { gearSizes } from '../../tooth/gear.js';
import { mustFail } from '../check.js';
import { capturedPair } from '../checks/capturedPair.js';
import { type TrainPlay, trainPlay } from '../motion/trainPlay.js';
import { helpedBodies } from '../nearest/helpedBodies.js';
import type { SimpleTrainRecord } from '../sheetTypes.js';
import type { ProofArrangement } from './arrangement.js';

const nothing = () => [];

/** What is asked of gears whose axes and guides the maker holds. */
const parallel: Omit<ProofArrangement<TrainSpec>, 'title' | 'record'> = {
  assembly: nothing,
  use: nothing,
  openings: nothing,
  outlines: nothing,
  playOf: trainPlay,
  play: ({ play, spec }) => (play ? [capturedPair(play as TrainPlay, spec.limits.axialPlay)] : []),
  helpedBodies: (spec, checks, isProved) => helpedBodies(spec, checks, mustFail, isProved),
};

export const pair: ProofArrangement<TrainSpec> = { ...parallel, title: 'Pair of gears', record: pairRecord };
export const rack: ProofArrangement<TrainSpec> = {
  ...parallel,
  title: 'Rack and pinion',
  record: ({ gears: [pinion] }) => ({
    ratios: { travelPerTurn: 2 * Math.PI * gearSizes(pinion.gear).referenceRadius },
    planets: [],
  }),
};
export const gear: ProofArrangement<TrainSpec> = {
  ...parallel,
  title: 'Gear',
  record: () => ({ ratios: {}, planets: [] }),
};

function pairRecord({ gears: [pinion, wheel] }: Train): SimpleTrainRecord {
  const ratio = (wheel.way * wheel.gear.teeth) / pinion.gear.teeth;
  return { ratios: { pinionDriving: ratio, wheelDriving: 1 / ratio }, planets: [] };
}
