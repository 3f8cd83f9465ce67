import type { FittedTrain } from '../../fit/train/fitTrain.js';
import type { Check } from '../check.js';
import { contactRatio } from './contactRatio.js';
import { involuteInterference } from './involuteInterference.js';
import { rootSpace } from './rootSpace.js';
import { trochoidInterference } from './trochoidInterference.js';

/** Checks on the outlines of teeth that need nothing rolled. */
export function outlineChecks(asked: FittedTrain): Check[] {
  const ring = asked.meshes.find(({ pair }) => pair?.internal);
  if (!asked.meshes.length) return [rootSpace(asked)];
  return [
    rootSpace(asked),
    involuteInterference(asked),
    ...(ring ? [trochoidInterference(ring)] : []),
    contactRatio(asked),
  ];
}
