import type { Check } from '../check.js';
import { LEANING, unproved } from '../motion/confirmed.js';
import type { PlayRecord } from '../motion/playRecord.js';

/**
 * No loose part can leave along the axis, everything loose at once, and none moves more than the limit.
 * Limit: common practice, no source.
 * @param limit mm
 */
export function captured(play: PlayRecord, limit: number): Check {
  const { planetAxial, sunAxial, carrierAxial } = play.together;
  const ways = [planetAxial, sunAxial, ...(carrierAxial ? [carrierAxial] : [])].flatMap(({ up, down }) => [
    up,
    down,
  ]);
  const held = ways.every((way) => way !== null);
  const most = held ? Math.max(...ways) : null;
  const expected = carrierAxial ? ['planet', 'sun', 'carrier'] : ['planet', 'sun'];
  const missing = held ? unasked(play, expected) : [];
  const doubted = [
    ...unproved(play.confirmed).filter((motion) => motion !== LEANING),
    ...missing,
    ...[
      ...new Set(play.wayOut.filter(({ blocked }) => !blocked).map(({ part }) => `${part} on its way out`)),
    ],
  ];
  return {
    id: 'captured',
    holds: most !== null && most <= limit && doubted.length === 0,
    level: 'should',
    value: most,
    limit,
    unit: 'mm',
    says:
      most === null
        ? `nothing holds ${freeParts(play)} along the axis: they slide or screw out. Herringbone teeth hold planets and sun, and so do lips; a carrier with both plates holds all`
        : `held by ${play.heldBy.join(' and ')}: with everything loose a planet was found to move ${mm(planetAxial.up)} up and ${mm(planetAxial.down)} down, the sun ${mm(sunAxial.up)} and ${mm(sunAxial.down)}${carrierAxial ? `, the carrier ${mm(carrierAxial.up)} and ${mm(carrierAxial.down)}` : ''}` +
          (most > limit ? '; a smaller gap or a larger helix angle holds them closer' : '') +
          (doubted.length ? `; the meshes do not bear it out: ${doubted.join(', ')}` : ''),
  };
}

/** Motions along the axis, and ways out, that ought to have been made on the meshes and were not. */
function unasked({ confirmed, wayOut }: PlayRecord, parts: readonly string[]): string[] {
  return parts.flatMap((part) => [
    ...['up', 'down']
      .map((way) => `${part} ${way}`)
      .filter((name) => !confirmed.some(({ motion }) => motion === name))
      .map((name) => `${name} was not tried`),
    ...(wayOut.some((way) => way.part.startsWith(part)) ? [] : [`the way out of the ${part} was not tried`]),
  ]);
}

function freeParts({ together: { planetAxial, sunAxial, carrierAxial } }: PlayRecord): string {
  const free = (axial: { up: number | null; down: number | null } | undefined) =>
    axial !== undefined && (axial.up === null || axial.down === null);
  const names = [
    free(planetAxial) && 'the planets',
    free(sunAxial) && 'the sun',
    free(carrierAxial) && 'the carrier',
  ].filter((name) => name !== false);
  return names.join(' and ');
}

function mm(length: number | null): string {
  return length === null ? 'without end' : `${length.toFixed(2)} mm`;
}
