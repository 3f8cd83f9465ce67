import type { Check } from '../check.js';
import type { SmallPart } from '../safety/smallParts.js';

/**
 * No loose part goes wholly into the small-parts cylinder of 16 CFR 1501.4. The figure is the largest margin of any
 * part that comes near: how far every wall could come in around it.
 */
export function smallParts({ smallParts: parts }: { smallParts: readonly SmallPart[] }): Check {
  const fitting = parts.filter(({ fits }) => fits);
  const margins = parts.flatMap(({ margin }) => (margin === null ? [] : [margin]));
  const holds = fitting.length === 0;
  return {
    id: 'small-parts',
    holds,
    level: 'note',
    value: margins.length ? Math.max(...margins) : null,
    limit: 0,
    unit: 'mm',
    says: holds
      ? `neither ${parts.map(({ part }) => part).join(' nor ')} was found to go into the small-parts cylinder of 16 CFR 1501.4`
      : `into the small-parts cylinder of 16 CFR 1501.4 (31.7 mm across, 25.4 to 57.1 mm deep) goes ${fitting
          .map(
            ({ part, margin }) =>
              `a loose ${part} with ${Math.max(0, margin!).toFixed(2)} mm to spare all round`,
          )
          .join(', ')}: not for children under 3 years. A larger module or face width makes larger parts`,
  };
}
