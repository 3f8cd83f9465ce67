import { shown } from '../../fit/coupon/readGaps.js';
import type { Station } from '../../fit/coupon/stations.js';
import { allowedGapError } from '../allowedGapError.js';
import type { Check } from '../check.js';
import { leastBy } from '../leastBy.js';
import type { StationRecord } from './couponSheet.js';

/** Every pinion stands off the frame by the gap that was drawn, measured on the finished meshes. */
export function stationGaps(stations: readonly Station[], records: readonly StationRecord[]): Check {
  const each = stations.map(({ gap, spec }, i) => {
    const { body, drawn } = records[i].gap;
    const allowed = allowedGapError(spec);
    const error = body === null ? Number.POSITIVE_INFINITY : Math.abs(body - drawn);
    return { gap, body, drawn, allowed, error };
  });
  const worst = leastBy(each, ({ error, allowed }) => -error / allowed);
  const measured = each.map(({ drawn, body }) => `${drawn.toFixed(3)} is ${body?.toFixed(4) ?? 'not met'}`);
  return {
    id: 'body-gap',
    holds: worst.error <= worst.allowed,
    level: 'must',
    value: Number.isFinite(worst.error) ? worst.error : null,
    limit: worst.allowed,
    unit: 'mm',
    says: `drawn and measured, mm: ${measured.join(', ')}; farthest off, for what is allowed, at ${shown(worst.gap)}`,
  };
}

/** No pinion leaves its slot along its axis. */
export function stationsCaptured(
  stations: readonly Station[],
  records: readonly StationRecord[],
  limit: number,
): Check {
  const plays = records.map(({ play }) => play!);
  const most = Math.max(...plays.map(({ pushedOff }) => pushedOff));
  const unproved = stations
    .filter((_, i) => !(plays[i].clear && plays[i].blocked))
    .map(({ gap }) => shown(gap));
  const widest = plays.find(({ pushedOff }) => pushedOff === most)!;
  return {
    id: 'captured',
    holds: most <= limit && unproved.length === 0,
    level: 'should',
    value: most,
    limit,
    unit: 'mm',
    says:
      `${unproved.length ? 'by the numbers' : 'herringbone teeth hold every pinion:'} the loosest moves ${widest.centred.toFixed(2)} mm up and down in the middle of its play, ${most.toFixed(2)} mm pushed off the teeth${unproved.length ? '' : ', and no turn frees it beyond'}; tipping is left out` +
      (most > limit ? '; smaller gaps or a larger helix angle hold them closer' : '') +
      (unproved.length ? `; the meshes do not bear it out at ${unproved.join(', ')}` : ''),
  };
}

/**
 * First layers of every pinion and the frame stay apart when walls stand out. No more than a note: to find where they
 * do not is what small gaps are on a coupon for.
 * @param taken by each wall, mm
 */
export function stationsFirstLayer(records: readonly StationRecord[], taken: number): Check {
  const known = records.filter(({ firstLayer }) => firstLayer !== null);
  const least = known.length ? Math.min(...known.map(({ firstLayer }) => firstLayer!)) : null;
  const fused = known.filter(({ firstLayer }) => firstLayer! <= 0).map(({ gap }) => shown(gap.asked));
  const when = `when walls stand out by ${taken.toFixed(3)} mm each`;
  return {
    id: 'first-layer',
    holds: fused.length === 0,
    level: 'note',
    value: least,
    limit: 0,
    unit: 'mm',
    says:
      least === null
        ? 'first layers are far apart'
        : fused.length
          ? `first layers run into each other at ${fused.join(', ')}, by ${(-least).toFixed(3)} mm at most, ${when}, as those of a set with such gaps would: cut such a foot before you judge the gap, or set printer.firstLayerGrowth to what yours does`
          : `first layers are ${least.toFixed(3)} mm apart at least ${when}`,
  };
}
