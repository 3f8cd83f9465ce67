import { escapeText } from '../escape.js';

/** x to the right and y down the page, mm, as SVG has it. */
export type PagePoint = readonly [x: number, y: number];

/** A length on the page: at most three decimals, never an exponent. */
export function num(value: number): string {
  return String(Number(value.toFixed(3)) + 0);
}

/** A group whose attributes every child takes over. */
export function group(attributes: Record<string, string | number>, ...children: string[]): string {
  const list = Object.entries(attributes).map(([name, value]) => ` ${name}="${escapeText(String(value))}"`);
  return `<g${list.join('')}>\n${children.filter(Boolean).join('\n')}\n</g>`;
}

export function line(from: PagePoint, to: PagePoint): string {
  return `<line x1="${num(from[0])}" y1="${num(from[1])}" x2="${num(to[0])}" y2="${num(to[1])}"/>`;
}

export function circle(centre: PagePoint, radius: number): string {
  return `<circle cx="${num(centre[0])}" cy="${num(centre[1])}" r="${num(radius)}"/>`;
}

export function rectangle(corner: PagePoint, width: number, height: number): string {
  return `<rect x="${num(corner[0])}" y="${num(corner[1])}" width="${num(width)}" height="${num(height)}"/>`;
}

/** One shape of several closed outlines; where they lie within one another, every second one is a hole. */
export function shape(outlines: readonly (readonly PagePoint[])[], attributes = ''): string {
  return `<path fill-rule="evenodd"${attributes} d="${outlines.map(closedPath).join('')}"/>`;
}

function closedPath(points: readonly PagePoint[]): string {
  let path = '';
  for (const point of points) path += `${path ? 'L' : 'M'}${num(point[0])} ${num(point[1])}`;
  return `${path}Z`;
}

export interface TextStyle {
  /** Height of the letters' box, mm [3]. */
  size?: number;
  anchor?: 'start' | 'middle' | 'end';
  /** Turn of the text about its own place, degrees, counter-clockwise [0]. */
  turn?: number;
  bold?: boolean;
}

/** A line of text with its base line at `at`; escaped here. */
export function text(at: PagePoint, words: string, style: TextStyle = {}): string {
  const { size = 3, anchor = 'start', turn = 0, bold = false } = style;
  const turned = turn ? ` transform="rotate(${num(-turn)} ${num(at[0])} ${num(at[1])})"` : '';
  const weight = bold ? ' font-weight="600"' : '';
  return `<text x="${num(at[0])}" y="${num(at[1])}" font-size="${num(size)}" text-anchor="${anchor}"${weight}${turned}>${escapeText(words)}</text>`;
}

/** A filled arrow head with its point at `tip`, coming from `from`. */
export function arrow(tip: PagePoint, from: PagePoint, length = 2.5): string {
  const run = Math.hypot(tip[0] - from[0], tip[1] - from[1]) || 1;
  const [ux, uy] = [(tip[0] - from[0]) / run, (tip[1] - from[1]) / run];
  const half = length / 6;
  const [bx, by] = [tip[0] - length * ux, tip[1] - length * uy];
  const corners = [tip, [bx - half * uy, by + half * ux], [bx + half * uy, by - half * ux]] as const;
  return `<path fill="#000" stroke="none" d="M${corners.map(([x, y]) => `${num(x)} ${num(y)}`).join('L')}Z"/>`;
}
