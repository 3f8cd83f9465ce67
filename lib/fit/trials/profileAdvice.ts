import { clamp } from '../../spec/nearest.js';
import { filamentNames } from '../../spec/profiles/filaments.js';
import { printerNames } from '../../spec/profiles/printers.js';
import { isWithin, ranges } from '../../spec/ranges.js';
import type { Conditions } from './conditions.js';
import type { Growth } from './growth.js';

/** What a profile file is told, mm and percent; only what is known. */
export interface ProfileAdvice {
  printer?: { profile?: string; growth?: number; firstLayerGrowth?: number };
  filament?: { material?: string; shrinkage?: number };
  fit?: { gap: number };
}

/**
 * What trials and readings tell a profile. Where growth is written, the gap is less by twice what is then
 * compensated beyond what the trials were drawn with, so that the drawn gap stays the one that was found.
 * @param gap `fit.gap` found with `compensated` mm of growth; undefined where too little is known
 */
export function profileAdvice(
  conditions: Conditions,
  gap: number | undefined,
  compensated: number,
  growth: Growth,
): ProfileAdvice {
  // A figure beyond what a profile may hold is no figure to draw by; short of its limit by chance alone, it is.
  const known = (key: 'growth' | 'firstLayerGrowth' | 'shrinkage') => {
    const { known, mean, sd } = growth[key];
    const within = clamp(mean, ...ranges[key]);
    return known && Math.abs(mean - within) <= 2 * sd ? rounded(within, 3) : undefined;
  };
  const measured = known('growth');
  const applied = measured ?? compensated;
  const asked = gap === undefined ? undefined : rounded(gap + 2 * (compensated - applied), 2);
  const printer = withoutUndefined({
    growth: measured ?? (compensated !== 0 && asked !== undefined ? compensated : undefined),
    firstLayerGrowth: known('firstLayerGrowth'),
  });
  const filament = withoutUndefined({ shrinkage: known('shrinkage') });
  const fit = asked !== undefined && isWithin(asked, ranges.gap) ? { gap: asked } : undefined;
  if (!printer && !filament && !fit) return {};
  const machine = { ...named('profile', conditions.printer, printerNames), ...printer };
  const material = { ...named('material', conditions.filament, filamentNames), ...filament };
  return {
    ...(Object.keys(machine).length ? { printer: machine } : {}),
    ...(Object.keys(material).length ? { filament: material } : {}),
    ...(fit ? { fit } : {}),
  };
}

/** A shipped name where the label of the log is one, letter case aside. */
function named<Key extends string>(key: Key, label: string | undefined, names: readonly string[]) {
  const name = names.find((each) => each.toLowerCase() === label?.trim().toLowerCase());
  return name === undefined ? {} : ({ [key]: name } as { [K in Key]: string });
}

function withoutUndefined<T extends Record<string, number | undefined>>(figures: T): T | undefined {
  const given = Object.entries(figures).filter(([, value]) => value !== undefined);
  return given.length ? (Object.fromEntries(given) as T) : undefined;
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}
