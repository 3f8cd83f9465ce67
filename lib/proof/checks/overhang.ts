import type { Part } from '../../solid/mesh.js';
import { firstOfEachKind } from '../../solid/partKinds.js';
import type { CommonSpec } from '../../spec/types.js';
import { degrees, radians } from '../../tooth/gear.js';
import type { Check } from '../check.js';
import { type Overhang, overhangOf } from '../printing/overhang.js';
import { undersidesOf } from '../printing/undersides.js';

/**
 * Area of the whole set, first layer left out, that leans out by more than the limit, measured on the meshes; flat
 * undersides only where they are neither carried by a body one or two layers below nor bridged (`undersidesOf`). Equal
 * planets are measured once. The flanks of helical teeth lean by the base helix angle at every height of the tooth
 * (ISO 21771: the involute helicoid is developable), which is a little less than the helix angle.
 */
export function overhang({ spec, parts }: { spec: CommonSpec; parts: readonly Part[] }): Check {
  const { overhangAngle: angle, overhangArea: limit } = spec.limits;
  const { printer, tolerance } = spec;
  const above = printer.layer;
  const limits = { above, layer: printer.layer, bridge: spec.limits.bridge, lineWidth: printer.lineWidth };
  let longestBridge = 0;
  const kinds = firstOfEachKind(parts).map(({ part: { name, mesh }, count }) => {
    const leaning = overhangOf(mesh, { angle, above, tolerance, withoutUndersides: true });
    const under = undersidesOf(mesh, parts, limits);
    longestBridge = Math.max(longestBridge, under.longestBridge);
    const free = under.at ? { steepest: 90, at: under.at } : {};
    return { name, count, ...leaning, ...free, area: leaning.area + under.area };
  });
  const area = kinds.reduce((sum, kind) => sum + kind.count * kind.area, 0);
  const worst = kinds.reduce((a, b) => (badness(b) > badness(a) ? b : a));
  const holds = area <= limit;
  const bridged = longestBridge > 0 ? `; flat undersides bridge up to ${longestBridge.toFixed(1)} mm` : '';
  const at = worst.at.map((x) => x.toFixed(1)).join(', ');
  return {
    id: 'overhang',
    holds,
    level: 'should',
    value: area,
    limit,
    unit: 'mm²',
    says:
      area === 0
        ? `nothing leans out by more than ${angle}° from the vertical, but for what the mesh tolerance explains; flanks lean by ${flankAngle(spec).toFixed(1)}°${bridged}`
        : `${area.toFixed(1)} mm² lean out by more than ${angle}° from the vertical, ${worst.steepest.toFixed(1)}° at worst, on ${worst.name} at ${at}` +
          (holds ? '' : advice(spec, angle)),
  };
}

function badness({ area, steepest }: Overhang): number {
  return area > 0 ? 90 + steepest : steepest;
}

/** Base helix angle, the same for every gear of the set, degrees. Source: ISO 21771, sin β_b = sin β cos α_n. */
function flankAngle({ helix, pressureAngle }: CommonSpec): number {
  return degrees(Math.asin(Math.sin(radians(helix.angle)) * Math.cos(radians(pressureAngle))));
}

/** Bevels lean by what is left of 90° to their angle, flanks by the base helix angle: sin β_b = sin β cos α_n. */
function advice(spec: CommonSpec, limit: number): string {
  const ways: string[] = [];
  const steep = Math.ceil(90 - limit);
  if (spec.bevel.size > 0 && spec.bevel.angle < 90 - limit)
    ways.push(steep <= 60 ? `bevel.angle ${steep}` : 'bevel.size 0');
  const most = Math.sin(radians(limit)) / Math.cos(radians(spec.pressureAngle));
  if (flankAngle(spec) > limit) ways.push(`helix.angle ${Math.floor(degrees(Math.asin(most)))} or less`);
  return ways.length ? `; ${ways.join(' and ')} would pass` : '; print it with supports there';
}
