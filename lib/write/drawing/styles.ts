/** Line kinds in the manner of ISO 128-2: a wide line for edges, a narrow one for all else. Widths in mm. */
export const EDGE = { fill: 'none', stroke: '#000', 'stroke-width': 0.35, 'stroke-linejoin': 'round' };
export const THIN = { fill: 'none', stroke: '#000', 'stroke-width': 0.13 };
/** Axes and reference circles: long dash, dot. */
export const CHAIN = { ...THIN, 'stroke-dasharray': '5 0.9 0.4 0.9' };
/** Text over hatching keeps a white edge. */
export const LETTERING = {
  fill: '#000',
  stroke: '#fff',
  'stroke-width': 0.6,
  'stroke-linejoin': 'round',
  'paint-order': 'stroke',
  'font-family': 'Helvetica, Arial, Liberation Sans, DejaVu Sans, sans-serif',
};
/** Lettering on clear paper. */
export const PLAIN = { fill: '#000', stroke: 'none', 'font-family': LETTERING['font-family'] };

/** One hatching for each kind of part, so that neighbours differ: turn in degrees and spacing in mm. */
const HATCHES = { sun: [45, 1.6], planet: [-45, 2.2], ring: [45, 2.8] } as const;

export type Hatch = keyof typeof HATCHES;

/** The hatchings as definitions that `hatch` refers to. */
export function hatchDefinitions(): string {
  const patterns = Object.entries(HATCHES).map(
    ([name, [turn, step]]) =>
      `<pattern id="hatch-${name}" patternUnits="userSpaceOnUse" width="${step}" height="${step}" patternTransform="rotate(${turn})"><line x1="0" y1="${step / 2}" x2="${step}" y2="${step / 2}" stroke="#000" stroke-width="0.09"/></pattern>`,
  );
  return `<defs>\n${patterns.join('\n')}\n</defs>`;
}

/** Attributes that fill a shape with the hatching of a part. */
export function hatch(part: Hatch): string {
  return ` fill="url(#hatch-${part})"`;
}
