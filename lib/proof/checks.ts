import type { Check } from './check.js';
import { assembly } from './checks/assembly.js';
import { bed } from './checks/bed.js';
import { bodyGap } from './checks/bodyGap.js';
import { captured } from './checks/captured.js';
import { coaxial } from './checks/coaxial.js';
import { contactRatio } from './checks/contactRatio.js';
import { fingerGaps } from './checks/fingerGaps.js';
import { firstLayer } from './checks/firstLayer.js';
import { freeToTurn } from './checks/freeToTurn.js';
import { helixAccuracy } from './checks/helixAccuracy.js';
import { involuteInterference } from './checks/involuteInterference.js';
import { layers } from './checks/layers.js';
import { lineWidth } from './checks/lineWidth.js';
import { mount } from './checks/mount.js';
import { neighbours } from './checks/neighbours.js';
import { opening } from './checks/opening.js';
import { overhang } from './checks/overhang.js';
import { pin } from './checks/pin.js';
import { plateClearance } from './checks/plateClearance.js';
import { rim } from './checks/rim.js';
import { rolling } from './checks/rolling.js';
import { rootSpace } from './checks/rootSpace.js';
import { selfIntersection } from './checks/selfIntersection.js';
import { skip } from './checks/skip.js';
import { smallParts } from './checks/smallParts.js';
import { thinFeatures } from './checks/thinFeatures.js';
import { tilt } from './checks/tilt.js';
import { tipThickness } from './checks/tipThickness.js';
import { trochoidInterference } from './checks/trochoidInterference.js';
import { undercut } from './checks/undercut.js';
import { watertight } from './checks/watertight.js';
import type { AllFindings, PlanFindings, ToothFindings } from './findings.js';

/** Checks on numbers alone. */
export function planChecks(found: PlanFindings): Check[] {
  return [
    ...[coaxial, assembly, neighbours, undercut, tipThickness, lineWidth, rim, thinFeatures, layers].map(
      (check) => check(found),
    ),
    skip(found, { material: found.spec.filament, limits: found.spec.limits }),
    opening(found, found.spec.opening),
    ...mount(found),
    fingerGaps(found),
  ];
}

/** Checks on the outlines of the teeth. */
export function toothChecks(found: ToothFindings): Check[] {
  return [
    ...[rootSpace, involuteInterference, trochoidInterference, contactRatio, rolling].map((check) =>
      check(found),
    ),
    ...pin(found),
  ];
}

/** Checks on the finished meshes. */
export function bodyChecks(found: AllFindings): Check[] {
  const { limits } = found.spec;
  const rolled = Math.min(found.rolling.inner.least, found.rolling.outer.least);
  return [
    ...[bodyGap, watertight, selfIntersection, helixAccuracy, overhang, firstLayer, bed, smallParts].map(
      (check) => check(found),
    ),
    freeToTurn(found.motion, found.bodies, rolled),
    ...plateClearance(found),
    captured(found.play, limits.axialPlay),
    tilt(found.play, limits.tilt),
  ];
}
