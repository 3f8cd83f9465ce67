import type { Advice } from '../../fit/trials/advise.js';
import { showConditions } from '../../fit/trials/conditions.js';
import { type Chances, LIKELY } from '../../fit/trials/gapAdvice.js';
import { type Figure, growthPrior } from '../../fit/trials/growth.js';
import { gapPrior } from '../../fit/trials/priors.js';
import type { Uncertain } from '../../fit/trials/spread.js';
import { outcomes } from '../../fit/trials/trialSchema.js';

/** Advice in lines of plain text, a paragraph for each group of conditions. Lengths in mm. */
export function adviceText(advice: readonly Advice[]): string {
  return [...advice.map((one) => groupLines(one).join('\n')), priorLines().join('\n')].join('\n\n');
}

function groupLines(advice: Advice): string[] {
  const { conditions, trials, knows, lacks, compensated, fit, next, disagreements, troubles } = advice;
  const others = trials.others
    ? `, ${trials.others} under other conditions that count with a shift${trials.leftOut ? ` (${trials.leftOut} too rare left out)` : ''}`
    : '';
  const growth = compensated === 0 ? '' : ` with printer.growth ${compensated}`;
  const lines = [`${showConditions(conditions)}: ${counted(trials.own, 'trial')}${others}`];
  if (knows === 'enough') lines.push(`  fit.gap ${fit.gap.toFixed(2)}${growth}: ${chancesText(fit.chances)}`);
  else {
    lines.push(`  knows too little: ${lacks}`);
    lines.push(`  best guess so far: fit.gap ${fit.gap.toFixed(2)}${growth}: ${chancesText(fit.chances)}`);
  }
  if (fit.range) {
    const { least, most } = fit.range;
    lines.push(
      `  free with a chance of ${100 * LIKELY} % or more: ${least.toFixed(2)} to ${most.toFixed(2)}`,
    );
  }
  lines.push(`  middle of the free gaps: ${spread(fit.middle)} (80 %)`);
  for (const { from, to, ...at } of fit.changes) lines.push(`  ${from} becomes ${to} at ${spread(at)}`);
  if (next.length) {
    lines.push('  print next, the most telling first (least expected variance of that middle):');
    for (const { gap, chances, sdAfter } of next)
      lines.push(
        `    ${gap.toFixed(2)}: ${chancesText(chances)}; then known to ± ${sdAfter.toFixed(3)} (now ${fit.middle.sd.toFixed(3)})`,
      );
  }
  // Among many trials some always disagree; it matters where they keep the gap from being known.
  for (const { wider, narrower } of knows === 'enough' ? [] : disagreements)
    lines.push(
      `  these disagree: ${wider.outcome} at ${wider.gap.toFixed(2)}, ${narrower.outcome} at ${narrower.gap.toFixed(2)} (drawn gaps)`,
    );
  lines.push(...growthLines(advice));
  lines.push(...profileLines(advice));
  for (const id of troubles) lines.push(`  see: cogweave trouble ${id}`);
  return lines;
}

function growthLines({ readings, growth }: Advice): string[] {
  if (!readings) return [];
  const line = (name: string, { known, ...figure }: Figure, unit: string) =>
    `    ${name}: ${spread(figure, 3)} ${unit}${known ? '' : ', too little known'}`;
  const lines = [
    `  from ${counted(readings, 'reading')} of this printer and filament (80 %):`,
    line('printer.growth', growth.growth, 'mm'),
    line('printer.firstLayerGrowth', growth.firstLayerGrowth, 'mm'),
    line('filament.shrinkage', growth.shrinkage, '%'),
    ...growth.misfits.map(
      ({ reading, expected }) =>
        `    ${[reading.part, reading.feature].filter(Boolean).join(' ')} ${reading.drawn} = ${reading.read} does not fit the others, which expect ${expected.toFixed(2)}: read it again`,
    ),
  ];
  if (!growth.growth.known || !growth.shrinkage.known)
    lines.push(
      '    to tell growth from shrinkage, read a bar and a hole of some 20 mm, and a long size (100 mm or more)',
    );
  return lines;
}

function profileLines({ profile, compensated, fit, knows }: Advice): string[] {
  const text = JSON.stringify(profile);
  if (text === '{}') return [];
  if (!profile.fit && knows === 'enough')
    return [
      `  for a profile: ${text} (no gap: less than a profile may hold would be left once walls are set back; look at the readings)`,
    ];
  const growth = profile.printer?.growth ?? 0;
  const moved =
    profile.fit && growth !== compensated
      ? ` (gap ${fit.gap} less twice the ${Number((growth - compensated).toFixed(3))} by which walls are now set back)`
      : '';
  return [`  for a profile: ${text}${moved}`];
}

function priorLines(): string[] {
  const { fused, tight, free, width, shift } = gapPrior;
  const { growth, firstLayerGrowth, shrinkage, error } = growthPrior;
  const factor = ({ median, logSd }: { median: number; logSd: number }) =>
    `${median} (within a factor of ${Math.exp(logSd).toFixed(1)})`;
  return [
    'Outcomes follow an ordinal logistic regression on the drawn gap. Believed beforehand (common practice, no source), mm:',
    `fused becomes tight at ${fused.mean} ± ${fused.sd}, free ${factor(tight)} later, loose ${factor(free)} later, each over a width of ${factor(width)};`,
    `another printer shifts all by ± ${shift.printer}, filament ± ${shift.filament}, dryness ± ${shift.dryness}; growth ${growth.mean} ± ${growth.sd}, first layer ${firstLayerGrowth.mean} ± ${firstLayerGrowth.sd},`,
    `shrinkage ${shrinkage.mean} ± ${shrinkage.sd} %, error of a reading ${factor(error)}.`,
  ];
}

function chancesText(chances: Chances): string {
  return outcomes
    .toSorted((a, b) => chances[b] - chances[a])
    .filter((outcome) => chances[outcome] >= 0.005)
    .map((outcome) => `${outcome} ${Math.round(100 * chances[outcome])} %`)
    .join(', ');
}

function spread({ mean, least, most }: Uncertain, decimals = 2): string {
  return `${shown(mean, decimals)}, between ${shown(least, decimals)} and ${shown(most, decimals)}`;
}

function shown(value: number, decimals: number): string {
  return (Number(value.toFixed(decimals)) + 0).toFixed(decimals);
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
