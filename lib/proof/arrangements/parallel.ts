import type { Train } from '../../fit/train/train.js';
import { trainNumbers } from '../../fit/train/trainNumbers.js';
import type { PairSpec, TrainSpec } from '../../spec/types.js';
import { gearSizes } from '../../tooth/gear.js';
import { mustFail } from '../check.js';
import { capturedPair } from '../checks/capturedPair.js';
import { type TrainPlay, trainPlay } from '../motion/trainPlay.js';
import { helpedBodies } from '../nearest/helpedBodies.js';
import { pairWays } from '../nearest/pairChanges.js';
import { trainWays } from '../nearest/trainChanges.js';
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
  assembles: () => true,
  triesRolling: true,
  ways: trainWays,
  countsHang: false,
  shifted: (_, shifts) => [shifts],
  follows: () => undefined,
  helpedBodies: (spec, checks, isProved) => helpedBodies(spec, checks, mustFail, isProved),
};

export const pair: ProofArrangement<PairSpec> = {
  ...(parallel as ProofArrangement<PairSpec>),
  title: 'Pair of gears',
  record: pairRecord,
  ways: pairWays,
  shifted: (_, shifts) => [shifts, { ...shifts, centreDistance: undefined }],
  // In steps far below what tells centre distances apart, mm.
  follows: (spec, path) =>
    path === 'centreDistance'
      ? Math.round(trainNumbers(spec).meshes[0].centreDistance * 1e5) / 1e5
      : undefined,
};
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
