import { problemOf, Refusal, refuse } from '../refusal.js';
import { BEVEL_FOR_LIPS, deepestByFace } from '../spec/bevelLimits.js';
import { ceilThousandth, floorThousandth } from '../spec/nearest.js';
import type { CommonSpec, Lips, PlanetarySpec } from '../spec/types.js';
import type { ToothProfile } from '../tooth/profile.js';
import { type LipRoom, lipRoom, MOST_BEVEL } from './lipRoom.js';

/** The ends of one kind of gear's teeth. */
export interface GearEnd {
  /** How far the tips are cut back radially at the end faces, mm. */
  bevelSize: number;
  /** Whether cones close the tooth spaces. */
  lips: boolean;
}

/** Steps of an offered bevel, mm. */
const STEP = 0.05;

/**
 * How the teeth of each gear end: bevels as asked, as far as they leave some involute in the end face. Where a gear has
 * lips, bevel and lip begin at one circle in the end face, which keeps the gap to the planets' bevels (`lipRoom`).
 * @param lips with the planets' distance from the axis, mm; null for none
 * @throws Refusal where lips find no room, or do not reach over the planets' bevels
 */
export function gearEnds(
  { bevel }: CommonSpec,
  gears: readonly { part: string; profile: ToothProfile }[],
  lips: Lipped | null,
): GearEnd[] {
  const ends = gears.map(({ profile }) => plainEnd(bevel.size, profile));
  if (!lips) return ends;
  const own = (part: string) => gears.findIndex((one) => one.part === part);
  const profiles = (['sun', 'planet', 'ring'] as const).map((part) => [part, gears[own(part)].profile]);
  const depths = lipBevels(lips, Object.fromEntries(profiles), ends[own('planet')].bevelSize);
  for (const [part, bevelSize] of depths) ends[own(part)] = { bevelSize, lips: true };
  return ends;
}

/** A set with lips. */
export interface Lipped {
  spec: PlanetarySpec & { lips: Lips };
  centreDistance: number;
}

/** Where the lips of each gear that has some begin, as depths of its bevels, mm. */
function lipBevels(
  { spec, centreDistance }: Lipped,
  profiles: Record<'sun' | 'planet' | 'ring', ToothProfile>,
  planetBevel: number,
): [string, number][] {
  const { lips } = spec;
  const parts = lips.on === 'both' ? (['ring', 'sun'] as const) : [lips.on];
  const roomIn = (bevel: number, gap: number, faceWidth = spec.faceWidth) =>
    parts.map((part) => lipRoom(part, profiles, centreDistance, bevel, gap, spec.bevel.angle, faceWidth));
  const rooms = roomIn(planetBevel, lips.gap);
  if (!rooms.every((room) => room !== null)) refuseRoom(spec, profiles.planet, roomIn);
  const reach = lips.reach === undefined ? undefined : reachIn(lips, lips.reach, rooms);
  return parts.map((part, i) => {
    const { deepest, least } = rooms[i];
    return [part, reach === undefined ? least : Math.max(least, deepest - reach)];
  });
}

function plainEnd(bevelSize: number, { tipRadius, formRadius }: ToothProfile): GearEnd {
  return { bevelSize: Math.min(bevelSize, MOST_BEVEL * Math.abs(tipRadius - formRadius)), lips: false };
}

/** The reach that is asked, if every gear has room for it. */
function reachIn({ on }: Lips, reach: number, rooms: readonly LipRoom[]): number {
  const low = ceilThousandth(Math.max(...rooms.map(({ deepest, most }) => deepest - most)));
  const high = floorThousandth(Math.min(...rooms.map(({ deepest, least }) => deepest - least)));
  if (low > high)
    refuse('lips-no-room', 'lips.on', on, 'no reach suits both gears: leave lips.reach out, or one of them', [
      'ring',
    ]);
  if (reach >= low - 1e-9 && reach <= high + 1e-9) return reach;
  const rule = `must be from ${low} to ${high} mm: over the planets' bevels, and no farther than the gap allows`;
  refuse('lips-no-room', 'lips.reach', reach, rule, [reach < low ? low : high]);
}

/** Gaps that are tried, as shares of the one asked. */
const GAPS = Array.from({ length: 19 }, (_, i) => 0.95 - 0.05 * i);
/** Faces that are tried where lips find no room, as multiples of the one asked. */
const WIDER = [1.05, 1.1, 1.2, 1.3, 1.4, 1.6, 1.8, 2, 2.5, 3, 4];

/**
 * What gives all lips room is offered: a larger bevel within the rules of the file, a smaller gap, a wider face, or a larger
 * bevel and a smaller gap together, if any of them does.
 * @throws Refusal, always
 */
function refuseRoom(
  { bevel, rack, module, fit, faceWidth, lips, helix, retention }: Lipped['spec'],
  planet: ToothProfile,
  roomIn: (bevel: number, gap: number, faceWidth?: number) => (LipRoom | null)[],
): never {
  const rule = "leaves the lips no room over the planets' bevels";
  const deepest = MOST_BEVEL * Math.abs(planet.tipRadius - planet.formRadius);
  const most = Math.min(
    BEVEL_FOR_LIPS * rack.addendum * module + fit.gap,
    deepestByFace(faceWidth, bevel.angle),
    deepest,
  );
  const fits = (size: number, gap: number, face?: number) =>
    roomIn(Math.min(size, deepest), gap, face).every((room) => room !== null);
  for (let size = Math.ceil(bevel.size / STEP + 1e-9) * STEP; size <= most; size += STEP)
    if (fits(floorThousandth(size), lips.gap))
      refuse('lips-no-room', 'bevel.size', bevel.size, rule, [floorThousandth(size)]);
  // Bodies keep the gap of the teeth, so lips that come nearer help nobody.
  const gapThat = (holds: (gap: number) => boolean) =>
    GAPS.map((share) => floorThousandth(share * lips.gap)).find((gap) => gap >= fit.gap && holds(gap));
  const gap = gapThat((smaller) => fits(bevel.size, smaller));
  if (gap !== undefined) refuse('lips-no-room', 'lips.gap', lips.gap, rule, [gap]);
  const wider = WIDER.map((times) => ceilThousandth(times * faceWidth)).find((face) =>
    fits(bevel.size, lips.gap, face),
  );
  if (wider !== undefined)
    refuse('lips-no-room', 'faceWidth', faceWidth, `${rule}, as high as it lets them be`, [wider]);
  const size = floorThousandth(most);
  const both = size > bevel.size ? gapThat((smaller) => fits(size, smaller)) : undefined;
  if (both !== undefined)
    throw new Refusal([
      problemOf('lips-no-room', 'bevel.size', bevel.size, rule, [size]),
      problemOf('lips-no-room', 'lips.gap', lips.gap, rule, [both]),
    ]);
  refuse('lips-no-room', 'retention', retention, 'these teeth leave lips no room', [
    helix.form === 'herringbone' ? 'herringbone' : 'none',
  ]);
}
