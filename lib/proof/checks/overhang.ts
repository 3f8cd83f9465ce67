import type { Mesh, Part } from '../../solid/mesh.js';
import { firstOfEachKind } from '../../solid/partKinds.js';
import { LEAST_HELIX, ranges } from '../../spec/ranges.js';
import type { CommonSpec, PlanetarySpec } from '../../spec/types.js';
import { degrees, radians } from '../../tooth/gear.js';
import type { Check } from '../check.js';
import { meshBounds } from '../mesh/volume.js';
import { type Overhang, overhangOf } from '../printing/overhang.js';
import { isCarried, type Start, startsAbove } from '../printing/starts.js';
import { CARRIED_LAYERS, undersidesOf } from '../printing/undersides.js';

/**
 * Area of the whole set, first layer left out, that leans out by more than the limit, measured on the meshes; flat
 * undersides only where they are neither carried by a body one or two layers below nor bridged (`undersidesOf`). And
 * every body begins on the bed or over a body that carries it, however small the place where it begins: a point in the
 * air leans out nowhere, and nothing prints there all the same.
 * Equal planets are measured once, unless a script changed some part: what is added may carry one of them alone.
 * The flanks of helical teeth lean by the base helix angle at every height of the tooth
 * (ISO 21771: the involute helicoid is developable), which is a little less than the helix angle.
 *
 * A `must` where a whole part has nothing under it at all: there is no place at which its print could begin, while what
 * hangs on a part that is carried may sag and be cut off.
 */
export function overhang({ spec, parts }: { spec: Printed; parts: readonly Part[] }): Check {
  const { overhangAngle: angle, overhangArea: limit } = spec.limits;
  const { printer, tolerance } = spec;
  const above = printer.layer;
  const limits = { above, layer: printer.layer, bridge: spec.limits.bridge, lineWidth: printer.lineWidth };
  const changed = parts.some(({ added }) => added !== undefined);
  let longestBridge = 0;
  const alike = changed ? parts.map((part) => ({ part, count: 1 })) : firstOfEachKind(parts);
  const kinds = alike.map(({ part: { name, mesh }, count }) => {
    const leaning = overhangOf(mesh, { angle, above, tolerance, withoutUndersides: true });
    const under = undersidesOf(mesh, parts, limits);
    longestBridge = Math.max(longestBridge, under.longestBridge);
    const free = under.at ? { steepest: 90, at: under.at } : {};
    return { name, count, ...leaning, ...free, area: leaning.area + under.area };
  });
  const starts = alike.map(({ part }) => ({ name: part.name, ...startsOf(part.mesh, parts, spec) }));
  const area = kinds.reduce((sum, kind) => sum + kind.count * kind.area, 0);
  const worst = kinds.reduce((a, b) => (badness(b) > badness(a) ? b : a));
  const within = area <= limit;
  const bridged = longestBridge > 0 ? `; flat undersides bridge up to ${longestBridge.toFixed(1)} mm` : '';
  return {
    id: 'overhang',
    holds: within && starts.every(({ inAir }) => inAir.length === 0),
    level: starts.some(({ stands }) => !stands) ? 'must' : 'should',
    value: area,
    limit,
    unit: 'mm²',
    says:
      inWords(starts) +
      (area === 0
        ? `nothing leans out by more than ${angle}° from the vertical, but for what the mesh tolerance explains; flanks lean by ${flankAngle(spec).toFixed(1)}°${bridged}`
        : `${area.toFixed(1)} mm² lean out by more than ${angle}° from the vertical, ${worst.steepest.toFixed(1)}° at worst, on ${worst.name} at ${placeOf(worst.at)}` +
          (within ? '' : advice(spec, angle, changed))),
  };
}

/** A file of any kind; the carrier's gap is what its gears are printed over. */
type Printed = CommonSpec & Partial<Pick<PlanetarySpec, 'carrier'>>;

/** Where a part begins in the air, and whether it begins anywhere else. */
interface Starts {
  inAir: Start[];
  stands: boolean;
}

function startsOf(mesh: Mesh, parts: readonly Part[], { printer: { layer }, carrier }: Printed): Starts {
  // A carrier's gears are printed over as many layers of air as its file asks for.
  const asked = typeof carrier === 'object' ? carrier.axialGap : 0;
  const layers = Math.max(CARRIED_LAYERS, asked);
  // A slicer looks at the middle of each layer: what begins above that of the first one is not in it.
  const above = startsAbove(mesh, layer / 2);
  const inAir = above.filter((start) => !isCarried(mesh, start, parts, { layer, layers }));
  const onBed = meshBounds(mesh).min[2] <= layer / 2;
  return { inAir, stands: onBed || inAir.length < above.length };
}

function inWords(starts: readonly (Starts & { name: string })[]): string {
  const hanging = starts.filter(({ inAir }) => inAir.length > 0);
  return hanging
    .map(({ name, inAir: [{ at }], stands }) =>
      stands
        ? `${name} begins in the air at ${placeOf(at)}, with nothing under it; `
        : `${name} as a whole hangs in the air, ${at[2].toFixed(2)} mm over the bed, z = 0; `,
    )
    .join('');
}

function placeOf(at: readonly number[]): string {
  return at.map((x) => x.toFixed(1)).join(', ');
}

function badness({ area, steepest }: Overhang): number {
  return area > 0 ? 90 + steepest : steepest;
}

/** Base helix angle, the same for every gear of the set, degrees. Source: ISO 21771, sin β_b = sin β cos α_n. */
function flankAngle({ helix, pressureAngle }: CommonSpec): number {
  return degrees(Math.asin(Math.sin(radians(helix.angle)) * Math.cos(radians(pressureAngle))));
}

/** Bevels lean by what is left of 90° to their angle, flanks by the base helix angle: sin β_b = sin β cos α_n. */
function advice(spec: CommonSpec, limit: number, changed: boolean): string {
  // What would help a script's solid is not in the file.
  if (changed) return '; print it with supports there';
  const ways: string[] = [];
  const steep = Math.ceil(90 - limit);
  if (spec.bevel.size > 0 && spec.bevel.angle < 90 - limit)
    ways.push(steep <= ranges.bevelAngle[1] ? `bevel.angle ${steep}` : 'bevel.size 0');
  const most = Math.sin(radians(limit)) / Math.cos(radians(spec.pressureAngle));
  const flattest = Math.floor(degrees(Math.asin(Math.min(1, most))));
  if (flankAngle(spec) > limit)
    ways.push(flattest >= LEAST_HELIX ? `helix.angle ${flattest} or less` : 'helix.form spur');
  return ways.length ? `; ${ways.join(' and ')} would pass` : '; print it with supports there';
}
