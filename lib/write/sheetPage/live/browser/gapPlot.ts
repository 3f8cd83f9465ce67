/// <reference lib="dom" />
import type { LiveData } from '../liveData.js';
import type { Turning } from './turning.js';

/**
 * A plot of the least gap through one pitch, a line for each kind of mesh, and where the set stands now.
 * Runs in the page, so it names nothing outside itself.
 * @returns draws the mark anew
 */
export function gapPlot(
  svg: SVGSVGElement,
  words: HTMLElement,
  data: LiveData,
  turning: Turning,
): () => void {
  const curves = data.mates.filter(({ curve }) => curve.length > 0);
  const [left, right, top, bottom] = [46, 578, 14, 168];
  const most = 1.25 * Math.max(...curves.flatMap(({ curve, gap }) => [gap, ...curve]));
  const x = (share: number) => left + (right - left) * share;
  const y = (gap: number) => bottom - ((bottom - top) * gap) / most;
  const add = (name: string, attributes: Record<string, string | number>, content = '') => {
    const element = document.createElementNS('http://www.w3.org/2000/svg', name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
    element.textContent = content;
    svg.append(element);
    return element;
  };
  add('text', { x: left - 40, y: top - 2 }, 'mm');
  const step = 10 ** Math.floor(Math.log10(most / 2));
  for (let tick = 0; tick <= most; tick += most / step > 5 ? 2 * step : step) {
    add('line', { x1: left, x2: right, y1: y(tick), y2: y(tick), class: 'grid' });
    add('text', { x: left - 6, y: y(tick) + 4, 'text-anchor': 'end' }, tick.toFixed(step < 0.1 ? 2 : 1));
  }
  for (const share of [0, 0.25, 0.5, 0.75, 1])
    add(
      'text',
      { x: x(share), y: bottom + 18, 'text-anchor': 'middle' },
      share === 0 ? '0' : `${share} pitch`,
    );
  const dashes = ['', '7 4', '2 3'];
  curves.forEach(({ curve, gap }, i) => {
    const points = [...curve, curve[0]].map((value, k) => `${x(k / curve.length)},${y(value)}`);
    if (i === 0) add('line', { x1: left, x2: right, y1: y(gap), y2: y(gap), class: 'asked' });
    add('polyline', { points: points.join(' '), class: 'curve', 'stroke-dasharray': dashes[i % 3] });
  });
  const mark = add('line', { y1: top, y2: bottom, class: 'mark' });
  return () => {
    const phase = turning.phase();
    mark.setAttribute('x1', String(x(phase)));
    mark.setAttribute('x2', String(x(phase)));
    const now = curves.map(({ between, curve, gap }) => {
      const at = phase * curve.length;
      const [before, after] = [curve[Math.floor(at) % curve.length], curve[Math.ceil(at) % curve.length]];
      const value = before + (after - before) * (at - Math.floor(at));
      const names = between.map((name) => name.replace(/-\d+$/, '')).join(' and ');
      return `${names}: now ${value.toFixed(3)} mm, least ${Math.min(...curve).toFixed(3)} mm, asked ${gap} mm`;
    });
    words.textContent = `${now.join('; ')}.`;
  };
}
