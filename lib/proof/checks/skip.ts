import { type SkipMaterial, skipOf } from '../../fit/skip.js';
import { bears, type SkipLimits, skipAdvice } from '../../fit/skipAdvice.js';
import { type SetNumbers, setOf } from '../../fit/train/setOf.js';
import type { PlanetarySpec } from '../../spec/types.js';
import type { Check } from '../check.js';
import type { PlanFindings } from '../findings.js';
import type { Change } from '../nearest/changes.js';
import { sayWays } from '../nearest/words.js';
import { worksWith } from '../nearest/works.js';

/**
 * The pinch on the rim (N) and the torque on the sun (N m) at which a tooth skips, each against its limit. The
 * record's figures are the pinch, or the torque where only that one fails.
 */
export function skip({ numbers }: PlanFindings<PlanetarySpec>): Check {
  const found = setOf(numbers);
  const { filament: material, limits } = found.spec;
  const result = skipOf(found, material);
  const { pinchForce, pinchStress, bindingForce, sunTorque, torqueStress, engagementLeft } = result;
  const pinchHolds = pinchForce >= limits.pinchForce;
  const torqueHolds = sunTorque >= limits.sunTorque;
  const holds = pinchHolds && torqueHolds;
  const byTorque = pinchHolds && !torqueHolds;
  return {
    id: 'skip',
    holds,
    level: 'should',
    value: byTorque ? sunTorque : pinchForce,
    limit: byTorque ? limits.sunTorque : limits.pinchForce,
    unit: byTorque ? 'N m' : 'N',
    says:
      `teeth of planets and ring still overlap by ${engagementLeft.toFixed(2)} mm when a planet is pushed in; ` +
      `a tooth skips at a pinch of ${force(pinchForce)} on the rim${breaking(pinchStress, pinchForce, force)} ` +
      `and a torque of ${torque(sunTorque)} on the sun${breaking(torqueStress, sunTorque, torque)}, ` +
      `at a modulus of ${material.modulus} MPa and with teeth that hold; a pinch of ${force(bindingForce)} over a planet binds it` +
      (holds
        ? ''
        : `; ${limits.pinchForce} N and ${limits.sunTorque} N m are asked. ${offer(found, material, limits)}`),
  };

  /** A stress beyond the strength means that the rim breaks first, at the share of the load that the strength is. */
  function breaking(stress: number, load: number, show: (load: number) => string): string {
    if (stress <= material.strength) return '';
    return ` (the rim breaks first, at about ${show((load * material.strength) / stress)})`;
  }
}

function offer({ spec }: SetNumbers, material: SkipMaterial, limits: SkipLimits): string {
  const { rim, faceWidth, gap, module } = skipAdvice(spec, material, limits);
  // Whoever changes a file changes what follows from it too, and must get a set that can be made.
  const passes = (path: string, value: number) =>
    worksWith(spec, { [path]: value }, (other) => bears(other, material, limits));
  const ways = Object.entries({ 'ring.rim': rim, faceWidth, 'fit.gap': gap, module })
    .filter(([path, value]) => value !== undefined && passes(path, value))
    .map(([path, value]): Change => ({ [path]: value }));
  return ways.length
    ? `With everything else as it is, ${sayWays(ways, ' or ')} would pass`
    : 'No rim up to five times and no face width up to three times as large, no smaller gap and no near module would pass alone';
}

function force(newton: number): string {
  return `${newton < 10 ? newton.toFixed(1) : newton.toFixed(0)} N`;
}

function torque(newtonMetre: number): string {
  return `${newtonMetre < 10 ? newtonMetre.toFixed(2) : newtonMetre.toFixed(0)} N m`;
}
