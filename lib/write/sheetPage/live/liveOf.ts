import { boundsOf } from '../../../proof/partRecords.js';
import type { Sheet } from '../../../proof/sheetTypes.js';
import type { Mesh } from '../../../solid/mesh.js';
import { partColour } from '../../../solid/partColour.js';
import { kindOf } from '../../../solid/partKinds.js';
import { radians } from '../../../tooth/gear.js';
import { type Loop, levelPlane, meshSection } from '../../drawing/section.js';
import { sectionHeight } from '../../drawing/sectionHeight.js';
import type { Subject } from '../../drawing/subject.js';
import type { LiveBody, LiveData, LiveMates, LiveShape } from './liveData.js';
import { modesOf } from './motions.js';
import { packShape } from './packShape.js';

/** How far the outlines shown may leave the mesh, mm: the gap is read off them. */
const OUTLINE = 0.0005;

/**
 * What the live view shows of a set.
 * @param subject the same parts with their places and mates
 */
export function liveOf(sheet: Sheet, subject: Subject): LiveData | null {
  const { parts, gears, mates, train } = subject;
  const modes = modesOf(train);
  if (parts.length === 0 || modes.length === 0) return null;
  const all = parts.map(({ mesh }) => mesh);
  const { min, max } = boundsOf(parts);
  const { bottom, level } = sectionHeight(subject);
  const shapes: LiveShape[] = [];
  const packed = new Map<Mesh, number>();
  const bodies = parts.map(({ name, mesh }): LiveBody => {
    const centre = gears.find(({ part }) => part === name)?.centre ?? [0, 0];
    const { body, angle } = mesh.copyOf ?? { body: mesh, angle: 0 };
    let shape = packed.get(body);
    if (shape === undefined) {
      shape = shapes.push(packShape(body, mesh.copyOf ? [0, 0] : centre)) - 1;
      packed.set(body, shape);
    }
    const colour = partColour(name).map((share) => Math.round(255 * share));
    return {
      name,
      colour: [colour[0], colour[1], colour[2]],
      centre: [centre[0], centre[1]],
      loops: meshSection(mesh, levelPlane(level), OUTLINE).map((loop) => flat(loop, centre)),
      shape,
      angle,
    };
  });
  const middle = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2] as const;
  return {
    bodies: [...bodies].sort((a, b) => order(a) - order(b)),
    shapes,
    modes,
    mates: mates.map(({ between, pitchPoint, gap, gapAcross }, i): LiveMates => {
      const { rollingCurve = [], drawn } = sheet.meshes[i].gap;
      return {
        between: [between[0], between[1]],
        at: [pitchPoint[0], pitchPoint[1]],
        follows: between.find((name) => kindOf(name) === 'planet') ?? between[0],
        shortening: gap / gapAcross,
        gap: drawn,
        curve: rollingCurve,
      };
    }),
    reach: Math.max(max[0] - min[0], max[1] - min[1]) / 2,
    middle: [middle[0], middle[1]],
    ball: farthest(all, middle),
    heights: [min[2], max[2]],
    level,
    phaseAtRest: phaseAt(sheet, level - bottom),
  };
}

/** Pitches by which the section at a height has been turned on by the helix. */
function phaseAt({ gears, resolved }: Sheet, height: number): number {
  const first = gears[0];
  const way = first.hand === 'left' ? -1 : 1;
  const turn = (way * Math.tan(radians(first.helixAngle)) * height) / (first.pitchDiameter / 2);
  return resolved.helix.form === 'spur' ? 0 : (turn * first.teeth) / (2 * Math.PI);
}

/** Large bodies are drawn first, so that none hides another. */
function order({ loops }: LiveBody): number {
  let most = 0;
  for (const loop of loops) for (const number of loop) most = Math.max(most, Math.abs(number));
  return -most;
}

function flat(loop: Loop, [cx, cy]: readonly [number, number]): number[] {
  const numbers: number[] = [];
  for (const point of loop) numbers.push(rounded(point[0] - cx), rounded(point[1] - cy));
  return numbers;
}

/** To a ten-thousandth of a millimetre: a gap is shown to a thousandth. */
function rounded(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}

function farthest(meshes: readonly Mesh[], [x, y, z]: readonly [number, number, number]): number {
  let most = 0;
  for (const { positions: p } of meshes)
    for (let i = 0; i < p.length; i += 3)
      most = Math.max(most, (p[i] - x) ** 2 + (p[i + 1] - y) ** 2 + (p[i + 2] - z) ** 2);
  return Math.sqrt(most);
}
