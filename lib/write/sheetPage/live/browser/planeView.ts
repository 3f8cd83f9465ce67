/// <reference lib="dom" />
import type { LiveBody, LiveData, LiveMates } from '../liveData.js';
import type { nearest } from './nearest.js';
import type { Turning } from './turning.js';

/** The section that turns. */
export interface PlaneView {
  /** Shows the whole set (−1), or the mesh of some mates. */
  look(mates: number): void;
  zoom(factor: number): void;
  draw(): void;
}

/** Runs in the page, so it names nothing outside itself. */
export function planeView(
  canvas: HTMLCanvasElement,
  data: LiveData,
  turning: Turning,
  findNearest: typeof nearest,
  say: (words: string) => void,
): PlaneView {
  const context = canvas.getContext('2d')!;
  const paths = new Map(data.bodies.map((body) => [body, pathOf(body)]));
  const marks = new Map(data.bodies.map((body) => [body, markOf(body)]));
  let [looking, zoom] = [-1, 1];

  function pathOf({ loops }: LiveBody): Path2D {
    const path = new Path2D();
    for (const loop of loops) {
      for (let i = 0; i < loop.length; i += 2)
        if (i === 0) path.moveTo(loop[0], loop[1]);
        else path.lineTo(loop[i], loop[i + 1]);
      path.closePath();
    }
    return path;
  }

  /** Where a dot that shows the turn stands: on +x, in the middle of the widest run of material. */
  function markOf({ loops }: LiveBody): number {
    const cuts: number[] = [];
    for (const loop of loops)
      for (let i = 0; i < loop.length; i += 2) {
        const [ax, ay] = [loop[i], loop[i + 1]];
        const [bx, by] = [loop[(i + 2) % loop.length], loop[(i + 3) % loop.length]];
        if (ay > 0 !== by > 0) {
          const x = ax + ((0 - ay) / (by - ay)) * (bx - ax);
          if (x > 0) cuts.push(x);
        }
      }
    cuts.sort((a, b) => a - b);
    if (cuts.length % 2) cuts.unshift(0);
    let [at, widest] = [0, 0];
    for (let i = 0; i + 1 < cuts.length; i += 2)
      if (cuts[i + 1] - cuts[i] > widest) {
        widest = cuts[i + 1] - cuts[i];
        // A wide run from the axis: the dot stands well off it.
        at = cuts[i] + widest * (cuts[i] === 0 ? 0.7 : 0.5);
      }
    return at;
  }

  /** Middle of the view in mm, and pixels for one mm. */
  function camera() {
    const side = Math.min(canvas.clientWidth, canvas.clientHeight);
    if (looking < 0) return { at: data.middle, scale: (zoom * side) / (2.05 * data.reach) };
    const mates = data.mates[looking];
    return { at: pointOf(mates), scale: (zoom * side) / (40 * mates.gap) };
  }

  /** The pitch point of some mates now: it goes round with the axis that it follows. */
  function pointOf({ at, follows }: LiveMates): [number, number] {
    const motion = turning.mode().motions[follows];
    const round = 2 * Math.PI * (motion?.orbit ?? 0) * turning.turns();
    const [cos, sin] = [Math.cos(round), Math.sin(round)];
    return [at[0] * cos - at[1] * sin, at[0] * sin + at[1] * cos];
  }

  const bodyOf = (name: string) => data.bodies.find((body) => body.name === name)!;
  const placed = (body: LiveBody) => ({ body, ...turning.place(body) });

  function draw() {
    const { at, scale } = camera();
    const dense = window.devicePixelRatio || 1;
    const [width, height] = [canvas.clientWidth, canvas.clientHeight];
    if (canvas.width !== Math.round(width * dense)) canvas.width = Math.round(width * dense);
    if (canvas.height !== Math.round(height * dense)) canvas.height = Math.round(height * dense);
    const style = getComputedStyle(canvas);
    const ink = style.color;
    const toScreen = (x: number, y: number): [number, number] => [
      (x - at[0]) * scale + width / 2,
      (at[1] - y) * scale + height / 2,
    ];
    context.setTransform(dense, 0, 0, dense, 0, 0);
    context.clearRect(0, 0, width, height);
    context.lineJoin = 'round';
    for (const body of data.bodies) {
      const { x, y, angle } = turning.place(body);
      const [sx, sy] = toScreen(x, y);
      context.save();
      context.translate(sx, sy);
      context.rotate(-angle);
      context.scale(scale, -scale);
      context.fillStyle = `rgb(${body.colour.join(' ')} / 0.85)`;
      context.strokeStyle = ink;
      context.lineWidth = 1 / scale;
      context.fill(paths.get(body)!, 'evenodd');
      context.stroke(paths.get(body)!);
      context.fillStyle = '#111';
      context.beginPath();
      context.arc(marks.get(body)!, 0, Math.max(3 / scale, data.reach / 60), 0, 2 * Math.PI);
      context.fill();
      context.restore();
    }
    if (looking < 0) names(toScreen, scale);
    else gap(toScreen, ink);
  }

  function names(toScreen: (x: number, y: number) => [number, number], scale: number) {
    context.font = '600 13px system-ui, sans-serif';
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    for (const body of data.bodies) {
      const words = body.name.replace('-', ' ');
      const widest = Math.max(...body.loops.flat().map(Math.abs));
      if (2 * widest * scale < context.measureText(words).width + 8) continue;
      const { x, y } = turning.place(body);
      const ringLike = marks.get(body)! > 0.6 * widest;
      const [sx, sy] = ringLike ? toScreen(x, y + marks.get(body)!) : toScreen(x, y);
      label(words, sx, sy);
    }
  }

  function label(words: string, x: number, y: number) {
    const { width } = context.measureText(words);
    context.fillStyle = 'rgb(255 255 255 / 0.85)';
    context.fillRect(x - width / 2 - 3, y - 9, width + 6, 18);
    context.fillStyle = '#111';
    context.fillText(words, x, y);
  }

  function gap(toScreen: (x: number, y: number) => [number, number], ink: string) {
    const mates = data.mates[looking];
    const [one, other] = mates.between.map((name) => placed(bodyOf(name)));
    const found = findNearest(one, other, pointOf(mates), 12 * mates.gap);
    if (!found) return;
    const [ax, ay] = toScreen(...found.from);
    const [bx, by] = toScreen(...found.to);
    const length = Math.hypot(bx - ax, by - ay) || 1;
    const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
    context.strokeStyle = context.fillStyle = ink;
    context.lineWidth = 1.5;
    for (const [x, y, way] of [
      [ax, ay, -1],
      [bx, by, 1],
    ]) {
      context.beginPath();
      context.moveTo(x + way * ux * 34, y + way * uy * 34);
      context.lineTo(x, y);
      context.stroke();
      context.beginPath();
      context.moveTo(x, y);
      context.lineTo(x + way * ux * 9 - uy * 3.5, y + way * uy * 9 + ux * 3.5);
      context.lineTo(x + way * ux * 9 + uy * 3.5, y + way * uy * 9 - ux * 3.5);
      context.fill();
    }
    context.font = '600 15px system-ui, sans-serif';
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    label(`${(found.distance * mates.shortening).toFixed(3)} mm`, bx + ux * 60, by + uy * 46);
    for (const { body, x, y } of [one, other]) {
      const [px, py] = pointOf(mates);
      const away = body.loops.some((loop) => loop.length > 0) ? Math.hypot(x - px, y - py) : 0;
      const sense = marks.get(body)! > away ? -1 : 1;
      const [dx, dy] = away > 0 ? [(x - px) / away, (y - py) / away] : [0, 1];
      const side = 0.36 * Math.min(canvas.clientWidth, canvas.clientHeight);
      label(
        body.name.replace('-', ' '),
        canvas.clientWidth / 2 + sense * dx * side,
        canvas.clientHeight / 2 - sense * dy * side,
      );
    }
  }

  /** The body under a point of the screen, the uppermost first. */
  function bodyAt(px: number, py: number): LiveBody | undefined {
    const { at, scale } = camera();
    const x = (px - canvas.clientWidth / 2) / scale + at[0];
    const y = at[1] - (py - canvas.clientHeight / 2) / scale;
    context.setTransform(1, 0, 0, 1, 0, 0);
    return [...data.bodies].reverse().find((body) => {
      const place = turning.place(body);
      const [dx, dy] = [x - place.x, y - place.y];
      const [cos, sin] = [Math.cos(place.angle), Math.sin(place.angle)];
      return context.isPointInPath(paths.get(body)!, dx * cos + dy * sin, dy * cos - dx * sin, 'evenodd');
    });
  }

  /** Turns of the driver for a drag of a body from one point (mm) to another; null for a body that is held. */
  function turnsFor(body: LiveBody, from: [number, number], to: [number, number]): number | null {
    const motion = turning.mode().motions[body.name];
    if (!motion) return null;
    const [sx, sy] = motion.shift;
    const way = sx * sx + sy * sy;
    if (way > 0) return ((to[0] - from[0]) * sx + (to[1] - from[1]) * sy) / way;
    const rate = motion.orbit || motion.turns;
    if (Math.abs(rate) < 1e-9) return null;
    const { x, y } = motion.orbit ? { x: 0, y: 0 } : turning.place(body);
    const angle = Math.atan2(
      (from[0] - x) * (to[1] - y) - (from[1] - y) * (to[0] - x),
      (from[0] - x) * (to[0] - x) + (from[1] - y) * (to[1] - y),
    );
    return angle / (2 * Math.PI * rate);
  }

  let dragged: { body: LiveBody; from: [number, number] } | null = null;
  const onSheet = (event: PointerEvent): [number, number] => {
    const { at, scale } = camera();
    const box = canvas.getBoundingClientRect();
    return [
      (event.clientX - box.left - canvas.clientWidth / 2) / scale + at[0],
      at[1] - (event.clientY - box.top - canvas.clientHeight / 2) / scale,
    ];
  };
  canvas.addEventListener('pointerdown', (event) => {
    const box = canvas.getBoundingClientRect();
    const body = bodyAt(event.clientX - box.left, event.clientY - box.top);
    if (!body) return;
    dragged = { body, from: onSheet(event) };
    canvas.setPointerCapture(event.pointerId);
  });
  canvas.addEventListener('pointermove', (event) => {
    if (!dragged) return;
    const to = onSheet(event);
    const turns = turnsFor(dragged.body, dragged.from, to);
    if (turns === null) say(`The ${dragged.body.name.replace('-', ' ')} is held.`);
    else turning.turnTo(turning.turns() + turns);
    dragged.from = onSheet(event);
  });
  for (const end of ['pointerup', 'pointercancel'] as const)
    canvas.addEventListener(end, () => {
      dragged = null;
    });

  return {
    look(mates) {
      [looking, zoom] = [mates, 1];
      draw();
    },
    zoom(factor) {
      zoom = Math.min(8, Math.max(0.5, zoom * factor));
      draw();
    },
    draw,
  };
}
