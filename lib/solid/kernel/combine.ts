import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import { refuse } from '../../refusal.js';
import type { Mesh } from '../mesh.js';
import { exactBody, exactMesh } from './exact.js';
import { inOrder } from './inOrder.js';
import { atLevels, levelsOf } from './levels.js';

/** One solid to be joined to a body or cut from it. */
export interface Step {
  operation: 'join' | 'cut';
  solid: Mesh;
  /** Where the solid was given, for refusals: `join.ring[0]`. */
  parameter: string;
}

/**
 * Joins and cuts in the order given. Vertices and triangles that no solid reaches stay as they were, to the last bit.
 * @throws Refusal naming the solid that is no closed solid, changes nothing, leaves nothing, stays loose, or parts the
 * body in pieces
 */
export type Combine = (body: Mesh, steps: readonly Step[]) => Mesh;

/** The body after a step. */
interface Stage {
  body: Manifold;
  step?: Step;
  tool?: Manifold;
}

/** Volumes that differ by less than this share are the same. */
const SAME_VOLUME = 1e-9;

/** `Combine` with a kernel that is started. */
export function combineWith(kernel: ManifoldToplevel): Combine {
  return (body, steps) => {
    const used: Manifold[] = [];
    const keep = (solid: Manifold): Manifold => {
      used.push(solid);
      return solid;
    };
    const read = (mesh: Mesh, parameter: string): Manifold => {
      const solid = exactBody(kernel, mesh);
      if (!solid)
        refuse('not-closed', parameter, 'a solid', 'the kernel does not find it closed and 2-manifold');
      return keep(solid);
    };
    try {
      const stages: Stage[] = [{ body: read(body, 'part') }];
      let levels = levelsOf(body);
      for (const step of steps) {
        const before = stages[stages.length - 1].body;
        const solid = atLevels(step.solid, levels);
        levels = levelsOf(solid, levels);
        const tool = read(solid, step.parameter);
        const after = keep(step.operation === 'join' ? before.add(tool) : before.subtract(tool));
        refuseIdle(before, tool, after, step);
        stages.push({ body: after, step, tool });
      }
      refusePieces(stages);
      return inOrder(body, exactMesh(stages[stages.length - 1].body));
    } finally {
      for (const solid of used) solid.delete();
    }
  };
}

function refuseIdle(before: Manifold, tool: Manifold, after: Manifold, { operation, parameter }: Step): void {
  if (after.isEmpty()) refuse('not-one-body', parameter, sizeOf(tool), 'leaves nothing of the part');
  const change = Math.abs(after.volume() - before.volume());
  if (change > SAME_VOLUME * before.volume()) return;
  const why = operation === 'join' ? 'lies wholly inside the part' : 'does not reach the part';
  refuse('no-effect', parameter, sizeOf(tool), `changes nothing, since it ${why} (${boxOf(before)})`);
}

/** Solids may be loose on the way, as long as the last one brings everything together. */
function refusePieces(stages: readonly Stage[]): void {
  const before = pieces(stages[0].body);
  const isMore = ({ solids, hollows }: Pieces) => solids > before.solids || hollows > before.hollows;
  if (!isMore(pieces(stages[stages.length - 1].body))) return;
  const { step, tool, body } = stages.find((stage) => isMore(pieces(stage.body))) as Required<Stage>;
  const { solids, hollows } = pieces(body);
  const hollow = hollows > before.hollows;
  const why =
    step.operation === 'join'
      ? hollow
        ? 'closes a hollow in, where a part is to be one closed surface; leave it an opening'
        : `does not hold on to the part, which would be ${solids} bodies; let it reach in by a line width (with it ${boxOf(body)})`
      : hollow
        ? 'leaves a closed hollow in the part, which is to be one closed surface; let it reach the outside'
        : `cuts the part in pieces, ${solids} of them; cut less deep, so that they hang together`;
  refuse('not-one-body', step.parameter, sizeOf(tool), why);
}

function sizeOf(solid: Manifold): string {
  return `a solid of ${Number(solid.volume().toPrecision(4))} mm³`;
}

/** Where a body lies, for a script that misplaced a solid. */
function boxOf(body: Manifold): string {
  const { min, max } = body.boundingBox();
  const corner = (place: ArrayLike<number>) => Array.from(place, (value) => value.toFixed(1)).join(', ');
  return `the part reaches from ${corner(min)} to ${corner(max)} mm`;
}

/** Closed surfaces of a body: those around solids, and those around hollows in them. */
interface Pieces {
  solids: number;
  hollows: number;
}

function pieces(body: Manifold): Pieces {
  const found: Pieces = { solids: 0, hollows: 0 };
  for (const part of body.decompose()) {
    if (part.volume() < 0) found.hollows++;
    else found.solids++;
    part.delete();
  }
  return found;
}
