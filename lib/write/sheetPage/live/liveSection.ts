import { createHash } from 'node:crypto';
import { kindOf } from '../../../solid/partKinds.js';
import { escapeText } from '../../escape.js';
import { section } from '../html.js';
import { gapPlot } from './browser/gapPlot.js';
import { nearest } from './browser/nearest.js';
import { planeView } from './browser/planeView.js';
import { spaceView } from './browser/spaceView.js';
import { startLive } from './browser/startLive.js';
import { turning } from './browser/turning.js';
import type { LiveData } from './liveData.js';

/** What runs in the page: the functions of the folder `browser` as they stand, joined by their names. */
const SCRIPT = `(${startLive})(JSON.parse(document.getElementById('live-data').textContent), {
turning: ${turning},
nearest: ${nearest},
planeView: ${planeView},
gapPlot: ${gapPlot},
spaceView: ${spaceView},
});`;

/** Lets this script run, and no other. */
export const SCRIPT_SOURCE = `'sha256-${createHash('sha256').update(SCRIPT).digest('base64')}'`;

/** How the lines of the plot are drawn, in the order of `gapPlot`. */
const STROKES = ['full line', 'dashed', 'dotted'];

/** The set turning: controls, a section, the gap through a pitch, the bodies in space. */
export function liveSection(data: LiveData): string {
  const held = data.modes.map(
    ({ label }, i) =>
      `<label><input type="radio" name="live-held" value="${i}"${i === 0 ? ' checked' : ''}> ${escapeText(label)}</label>`,
  );
  const views = data.mates.map(({ between }, i) => {
    const names = between.map((name) => name.replace('-', ' ')).join(' and ');
    return `<option value="${i}">mesh of ${escapeText(names)}</option>`;
  });
  const drawn = data.mates.filter(({ curve }) => curve.length > 0);
  const strokes = drawn.map(
    ({ between }, i) => `${STROKES[i % 3]}: ${between.map((name) => escapeText(kindOf(name))).join(' and ')}`,
  );
  const plot =
    drawn.length > 0
      ? `<figure><svg id="live-plot" viewBox="0 0 600 190" role="img" aria-labelledby="live-plot-words"></svg>
<figcaption>Least normal gap of each kind of mesh through one pitch, over all its places; thin line: as drawn; ${strokes.join(', ')}. <span id="live-plot-words"></span></figcaption></figure>`
      : '';
  return section(
    'Turning',
    `<noscript><p>The turning views need a browser that runs the script in this page; everything else is here without it.</p></noscript>`,
    `<div class="live">
${held.length > 1 ? `<fieldset class="controls"><legend>Held still</legend>${held.join(' ')}</fieldset>` : ''}
<p class="controls"><button id="live-play" type="button" aria-pressed="false">Turn</button>
<label><span>Turn of the <span id="live-driver"></span></span> <input id="live-turn" type="range" min="0" max="360" step="0.5" value="0"></label></p>
<div class="live-views">
<div><p class="controls"><label>Show <select id="live-view"><option value="-1">everything</option>${views.join('')}</select></label>
<button id="live-closer" type="button" aria-label="Closer">+</button>
<button id="live-farther" type="button" aria-label="Farther">−</button></p>
<canvas id="live-plane" tabindex="0" role="application" aria-label="Section of the set at ${data.level.toFixed(1)} mm above the bed. Arrow keys turn it, plus and minus zoom, space starts and stops, home puts it back."></canvas>
</div>
<div id="live-space-box"><p class="controls"><label>Cut the bodies <select id="live-cut"><option value="none">not</option><option value="z">across the axis</option><option value="y">along the axis</option></select></label>
<label>at <input id="live-through" type="range" min="0" max="100" value="50" disabled aria-label="Where the bodies are cut"></label></p>
<canvas id="live-space" tabindex="0" role="application" aria-label="The bodies in space. Arrow keys turn the view, plus and minus zoom."></canvas></div>
</div>
<p id="live-status" role="status"></p>
${plot}
</div>`,
    `<script type="application/json" id="live-data">${JSON.stringify(data).replaceAll('<', '\\u003c')}</script>`,
    `<script>${SCRIPT}</script>`,
  );
}

/** How the live views are laid out. */
export const LIVE_STYLE = `
.live { display: grid; gap: 0.6rem; }
.live-views { display: grid; gap: 0.6rem; }
.live-views .controls { margin-bottom: 0.4rem; min-height: 2.4rem; }
@media (min-width: 52rem) { .live-views { grid-template-columns: 1fr 1fr; } }
.live canvas { width: 100%; max-width: 40rem; aspect-ratio: 1; border: 1px solid var(--line); background: var(--soft); color: var(--ink); touch-action: pan-y; }
.live canvas:focus-visible { outline: 3px solid var(--focus); outline-offset: 2px; }
.live figure { margin: 0; max-width: 40rem; }
.live figure svg { width: 100%; overflow: visible; }
.live figure text { fill: var(--ink); font: 12px system-ui, sans-serif; }
.live .grid { stroke: var(--line); stroke-width: 1; }
.live .curve { fill: none; stroke: var(--ink); stroke-width: 2; }
.live .asked { stroke: var(--ink); stroke-width: 0.7; }
.live .mark { stroke: var(--focus); stroke-width: 2; }
.controls { display: flex; flex-wrap: wrap; gap: 0.4rem 1.2rem; align-items: center; margin: 0; max-width: none; }
fieldset.controls { border: 1px solid var(--line); padding: 0.3rem 0.7rem; max-width: 40rem; }
.controls label { display: inline-flex; align-items: center; gap: 0.4rem; }
.controls button, .controls select { font: inherit; min-height: 2.4rem; min-width: 2.4rem; color: var(--ink); background: var(--soft); border: 1px solid var(--line); border-radius: 4px; padding: 0 0.8rem; }
.controls input[type=range] { width: min(16rem, 45vw); }
#live-status { margin: 0; min-height: 1.5em; font-variant-numeric: tabular-nums; }
@media print { .live, noscript { display: none; } }
`;
