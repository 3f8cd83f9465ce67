import { carrierRules } from './rules/carrier.js';
import { featureRoom } from './rules/features.js';
import { boreWall, outerDiameter, planetRoot, ringTeeth, sunRoot } from './rules/gears.js';
import { helixAngle, lipsAsked, retentionForm, transverseModule } from './rules/helix.js';
import { rackShape } from './rules/rack.js';
import type { Rule } from './rules/rule.js';
import { bevelSize, gapOfModule, layerOfNozzle, wallGrowth } from './rules/sizes.js';
import { workload } from './rules/workload.js';

/** Every rule between parameters, each after those whose parameters it reads. */
export const rules: readonly Rule[] = [
  helixAngle,
  retentionForm,
  lipsAsked,
  transverseModule,
  rackShape,
  gapOfModule,
  layerOfNozzle,
  bevelSize,
  sunRoot,
  planetRoot,
  ringTeeth,
  boreWall,
  featureRoom,
  wallGrowth,
  outerDiameter,
  ...carrierRules,
  workload,
];
