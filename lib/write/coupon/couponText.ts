import type { CouponSheet } from '../../proof/coupon/couponSheet.js';
import { standing } from '../../proof/standing.js';
import { aligned, sidesOf } from '../aligned.js';
import { type Paint, plain } from '../paint.js';

/**
 * The sheet of a coupon in a few aligned lines: stations, gauge, then what fails and how many checks hold. Lengths in
 * mm. @param paint colours for a terminal [none]
 */
export function couponText(sheet: CouponSheet, paint: Paint = plain): string {
  const shown = (value: number | null | undefined, digits = 4) => value?.toFixed(digits) ?? '-';
  const stations = [
    ['station', 'gap asked mm', 'drawn', 'rolling', 'bodies', 'axial play mm'],
    ...sheet.stations.map(({ part, gap, play }) => [
      part,
      gap.asked.toFixed(2),
      shown(gap.drawn),
      shown(gap.rollingLeast),
      shown(gap.body),
      shown(play?.pushedOff, 2),
    ]),
  ];
  const sizes = [
    ['for calipers', 'drawn mm', 'expected mm'],
    ...sheet.printing.sizes.map(({ part, feature, drawn, expected }) => [
      `${part} ${feature}`,
      drawn.toFixed(3),
      expected.toFixed(3),
    ]),
  ];
  const count = (word: string) => sheet.checks.filter((check) => standing(check) === word).length;
  const told = sheet.checks.filter(({ holds }) => !holds);
  return [
    paint('head', sheet.name),
    '',
    ...headed(stations, paint),
    '',
    ...headed(sizes, paint),
    '',
    ...(sheet.printTime
      ? [`prints in about ${sheet.printTime.minutes.toFixed(0)} minutes: ${sheet.printTime.how}`, '']
      : []),
    `checks: ${count('holds')} hold, ${count('fails')} fail, ${count('noted')} noted`,
    ...told.map((check) => `${paint(standing(check), check.id)}: ${check.says}`),
    ...sheet.adjustments.map((text) => `adjusted: ${text}`),
    ...sheet.cautions.map((text) => `caution: ${text}`),
  ]
    .map((line) => line.trimEnd())
    .join('\n');
}

function headed(rows: readonly (readonly string[])[], paint: Paint): string[] {
  const [head, ...rest] = aligned(rows, sidesOf(rows));
  return [paint('head', head), ...rest];
}
