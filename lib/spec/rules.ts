import { carrierRules } from './rules/carrier.js';
import { featureRoom } from './rules/features.js';
import { boreWall, outerDiameter, planetRoot, ringTeeth, sunRoot } from './rules/gears.js';
import { helixAngle, lipsAsked, retentionForm, transverseModule } from './rules/helix.js';
import { rackShape } from './rules/rack.js';
import type { Rule } from './rules/rule.js';
import { bevelSize, gapOfModule, layerOfNozzle, lippedBevelSize, wallGrowth } from './rules/sizes.js';
import { trainFeatureRoom } from './rules/trainFeatures.js';
import { barLength, ringedMate, ringedWheel, trainBodies, trainSize } from './rules/trains.js';
import { chordsOfWalls, toleranceOfGap, workload } from './rules/workload.js';
import type { Kind } from './types.js';

/** What a mesh asks of its tolerance, last in every kind: they read all that it is sized by. */
const meshes = [chordsOfWalls, toleranceOfGap, workload];

/** Rules between the parameters that files of every kind have. */
const common = [transverseModule, rackShape, gapOfModule, layerOfNozzle];

/** The rules of a pair, a rack or a single gear, one of them its own. */
const train = <K extends Exclude<Kind, 'planetary'>>(own: Rule<K>): readonly Rule<K>[] => [
  helixAngle,
  ...common,
  bevelSize,
  trainBodies,
  own,
  trainFeatureRoom,
  wallGrowth,
  trainSize,
  ...meshes,
];

/** Every rule of a kind of file, each after those whose parameters it reads. */
const rules: { [K in Kind]: readonly Rule<K>[] } = {
  planetary: [
    helixAngle,
    retentionForm,
    lipsAsked,
    ...common,
    lippedBevelSize,
    sunRoot,
    planetRoot,
    ringTeeth,
    boreWall,
    featureRoom,
    wallGrowth,
    outerDiameter,
    ...carrierRules,
    ...meshes,
  ],
  pair: train(ringedWheel),
  rack: train(barLength),
  gear: train(ringedMate),
};

/** The rules between the parameters of a kind of file, each after those whose parameters it reads. */
export function rulesFor(kind: Kind): readonly Rule[] {
  // A file is only ever held against the rules of its own kind.
  return rules[kind] as readonly Rule[];
}
