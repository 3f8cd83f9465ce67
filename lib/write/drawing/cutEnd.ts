import { CUT, PLAIN } from './styles.js';
import { arrow, group, line, type PagePoint, text } from './svg.js';

/** Length of the stroke and of the arrow on it, mm. */
const STROKE = 6;
const ARROW = 5;

/**
 * One end of a cutting plane's trace: a wide stroke outward from `at`, an arrow the way the section is looked at, and
 * the plane's letter.
 * @param outward -1 for an end on the left, 1 for one on the right
 */
export function cutEnd(at: PagePoint, outward: -1 | 1, looking: 'up' | 'down', letter: string): string {
  const [x, y] = at;
  const middle = x + outward * STROKE * 0.6;
  const sign = looking === 'up' ? -1 : 1;
  return [
    group(CUT, line(at, [x + outward * STROKE, y])),
    group(
      { ...CUT, 'stroke-width': 0.25 },
      line([middle, y], [middle, y + sign * ARROW]),
      arrow([middle, y + sign * ARROW], [middle, y]),
    ),
    group(
      PLAIN,
      text([middle + outward * 1.5, y + sign * ARROW + (sign > 0 ? 1 : 1.5)], letter, {
        size: 4,
        bold: true,
        anchor: outward > 0 ? 'start' : 'end',
      }),
    ),
  ].join('\n');
}
