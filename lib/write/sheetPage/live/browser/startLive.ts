/// <reference lib="dom" />
import type { LiveData } from '../liveData.js';
import type { gapPlot } from './gapPlot.js';
import type { nearest } from './nearest.js';
import type { planeView } from './planeView.js';
import type { spaceView } from './spaceView.js';
import type { turning } from './turning.js';

/** The other functions that run in the page. */
export interface LiveTools {
  turning: typeof turning;
  nearest: typeof nearest;
  planeView: typeof planeView;
  gapPlot: typeof gapPlot;
  spaceView: typeof spaceView;
}

/** Joins views and controls. Runs in the page, so it names nothing outside itself. */
export function startLive(data: LiveData, tools: LiveTools): void {
  const find = <T extends Element>(id: string) => document.getElementById(`live-${id}`) as unknown as T;
  const state = tools.turning(data);
  const status = find<HTMLElement>('status');
  const plane = tools.planeView(find('plane'), data, state, tools.nearest, (words) => {
    status.textContent = words;
  });
  const plot = find<SVGSVGElement>('plot')
    ? tools.gapPlot(find('plot'), find('plot-words'), data, state)
    : () => {};
  const space = tools.spaceView(find('space'), data, state);
  if (!space) find<HTMLElement>('space-box').textContent = 'This browser cannot draw the bodies in space.';

  const slider = find<HTMLInputElement>('turn');
  const degreesOf = (turns: number) => Math.round(turns * 3600) / 10 + 0;
  const shown = (rate: number) =>
    `${degreesOf(rate * state.turns())
      .toFixed(1)
      .replace('-', '−')}°`;
  function refresh() {
    const { motions, driver } = state.mode();
    const seen = data.bodies.filter(({ name }) => !/-([2-9]|\d\d)$/.test(name));
    const words = seen.map(({ name }) => {
      const motion = motions[name];
      const known = name.replace('-', ' ');
      if (!motion) return `${known} still`;
      if (motion.shift[0] || motion.shift[1])
        return `${known} ${(Math.hypot(...motion.shift) * state.turns()).toFixed(1)} mm`;
      return `${known} ${shown(motion.turns)}`;
    });
    const follower = motions['planet-1'];
    if (follower && !data.bodies.some(({ name }) => name === 'carrier'))
      words.push(`planets’ axes ${shown(follower.orbit)}`);
    status.textContent = words.join(' · ');
    find<HTMLElement>('driver').textContent = driver;
    const whole = Math.floor(state.turns());
    slider.value = String(degreesOf(state.turns() - whole));
    plane.draw();
    plot();
    if (spaceSeen) space?.draw();
  }
  let spaceSeen = false;
  new IntersectionObserver(([entry]) => {
    spaceSeen = entry.isIntersecting;
    if (spaceSeen) space?.draw();
  }).observe(find('space-box'));

  slider.addEventListener('input', () => {
    state.turnTo(Math.floor(state.turns()) + Number(slider.value) / 360);
  });
  document.querySelectorAll<HTMLInputElement>('input[name="live-held"]').forEach((choice, i) => {
    choice.addEventListener('change', () => state.setMode(i));
  });
  const view = find<HTMLSelectElement>('view');
  view.addEventListener('change', () => plane.look(Number(view.value)));
  find('closer').addEventListener('click', () => plane.zoom(1.25));
  find('farther').addEventListener('click', () => plane.zoom(0.8));

  // No motion unless asked for; for people who want little of it, in steps.
  const calm = matchMedia('(prefers-reduced-motion: reduce)');
  const play = find<HTMLButtonElement>('play');
  let playing = false;
  let last = 0;
  const pace = () => (Number(view.value) < 0 ? 0.06 : 0.004);
  function frame(now: number) {
    if (!playing) return;
    const elapsed = (now - last) / 1000;
    if (!calm.matches || elapsed > 0.8) {
      last = now;
      state.turnTo(state.turns() + pace() * (calm.matches ? 0.5 : Math.min(elapsed, 0.1)));
    }
    requestAnimationFrame(frame);
  }
  function toggle() {
    playing = !playing;
    play.setAttribute('aria-pressed', String(playing));
    play.textContent = playing ? 'Stop' : 'Turn';
    last = performance.now();
    if (playing) requestAnimationFrame(frame);
  }
  play.addEventListener('click', toggle);

  find<HTMLElement>('plane').addEventListener('keydown', (event) => {
    const by = (event.shiftKey ? 30 : 3) / 360;
    if (event.key === 'ArrowRight') state.turnTo(state.turns() + by);
    else if (event.key === 'ArrowLeft') state.turnTo(state.turns() - by);
    else if (event.key === '+' || event.key === '=') plane.zoom(1.25);
    else if (event.key === '-') plane.zoom(0.8);
    else if (event.key === ' ') toggle();
    else if (event.key === 'Home') state.turnTo(0);
    else return;
    event.preventDefault();
  });
  find<HTMLElement>('space').addEventListener('keydown', (event) => {
    const way = { ArrowLeft: [0.1, 0], ArrowRight: [-0.1, 0], ArrowUp: [0, 0.1], ArrowDown: [0, -0.1] }[
      event.key
    ];
    if (way) space?.turnView(way[0], way[1]);
    else if (event.key === '+' || event.key === '=') space?.zoom(1.25);
    else if (event.key === '-') space?.zoom(0.8);
    else return;
    event.preventDefault();
  });
  const cut = find<HTMLSelectElement>('cut');
  const through = find<HTMLInputElement>('through');
  for (const control of [cut, through])
    control.addEventListener('input', () => {
      through.disabled = cut.value === 'none';
      space?.cut(cut.value as 'none' | 'y' | 'z', Number(through.value) / 100);
    });
  state.onChange(refresh);
  new ResizeObserver(refresh).observe(find('plane'));
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', refresh);
  refresh();
}
