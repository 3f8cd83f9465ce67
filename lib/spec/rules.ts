import { carrierRules } from './rules/carrier.js';
import { featureRoom } from './rules/features.js';
import { boreWall, outerDiameter, planetRoot, ringTeeth, sunRoot } from './rules/gears.js';
import { helixAngle, lipsAsked, retentionForm, transverseModule } from './rules/helix.js';
import { rackShape } from './rules/rack.js';
import type { Rule } from './rules/rule.js';
import { bevelSize, gapOfModule, layerOfNozzle, wallGrowth } from './rules/sizes.js';
import { toleranceOfGap } from './rules/tolerance.js';
import { trainFeatureRoom } from './rules/trainFeatures.js';
import { barLength, ringedTeeth, trainBodies, trainSize } from './rules/trains.js';
import { chordsOfWalls, workload } from './rules/workload.js';
import type { Kind } from './types.js';

/** What a mesh asks of its tolerance, last in every kind: they read all that it is sized by. */
const meshes = [chordsOfWalls, toleranceOfGap, workload];

/** Rules between the parameters that files of every kind have. */
const common = [transverseModule, rackShape, gapOfModule, layerOfNozzle, bevelSize];

/** Every rule of a kind of file, each after those whose parameters it reads. */
const rules: { [K in Kind]: readonly Rule<K>[] } = {
  planetary: [
    helixAngle,
    retentionForm,
    lipsAsked,
    ...common,
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
  pair: [helixAngle, ...common, trainBodies, ringedTeeth, trainFeatureRoom, wallGrowth, trainSize, ...meshes],
  rack: [helixAngle, ...common, trainBodies, barLength, trainFeatureRoom, wallGrowth, trainSize, ...meshes],
  gear: [helixAngle, ...common, trainBodies, ringedTeeth, trainFeatureRoom, wallGrowth, trainSize, ...meshes],
};

/** The rules between the parameters of a kind of file, each after those whose parameters it reads. */
export function rulesFor(kind: Kind): readonly Rule[] {
  // A file is only ever held against the rules of its own kind.
  return rules[kind] as readonly Rule[];
}
