import type { Geom3 } from './geom3.js';
import type { Combine, Step } from './kernel/combine.js';
import { loadKernel } from './kernel.js';
import type { AddedSolid, Mesh, Part } from './mesh.js';
import { placed, raised } from './place.js';
import { type Addition, readAdditions, refuseUnknownParts } from './readAdditions.js';

/** One solid of @jscad/modeling or several, mm. */
export type Solids = Geom3 | readonly Geom3[];

/**
 * Solids to be joined to parts and cut from them, by the names of the parts (`sun`, `planet-2`, `ring`, …): in place,
 * as the parts are printed. Those under `planets` go to every planet, in the planet's own frame: its axis on z, the
 * bed at z = 0, a tooth on +x where it lies on the bed. Everything is joined first and cut afterwards. Sizes are those
 * of the print: shrinkage is made up for as it is for the parts, growth is not.
 */
export interface Additions {
  join?: Readonly<Record<string, Solids>>;
  cut?: Readonly<Record<string, Solids>>;
}

/** Where a planet's own frame lies: turned about z, radians, then moved in the bed's plane, mm. */
export interface Place {
  rotation: number;
  centre: [number, number];
}

/** Changes parts as a script asks; the kernel is loaded already. */
export interface Change {
  (parts: readonly Part[], where: ChangePlace): Part[];
  /** The same change with some solids higher, mm, by the parameters that they were given as. */
  raised?(up: ReadonlyMap<string, number>): Change;
}

/** What is known of the parts that are to be changed. */
export interface ChangePlace {
  /** The planets by name; none in a set without. */
  planets: ReadonlyMap<string, Place>;
  /** Parts are drawn this many times as large as they print. */
  scale: number;
}

/**
 * Reads what a script adds and loads the kernel, after which parts are changed without waiting.
 * Refuses what is not a closed solid; `Change` refuses names of no part, solids without effect, and loose ones.
 * @throws Refusal naming each entry that is wrong, as `join.ring[0]`
 */
export async function additionsTo(additions: Additions): Promise<Change> {
  const read = readAdditions(additions);
  const { combine } = await loadKernel();
  return changeOf(read, combine);
}

function changeOf(read: readonly Addition[], combine: Combine): Change {
  const change: Change = (parts, { planets, scale }) => {
    refuseUnknownParts(read, parts, planets.size > 0);
    return parts.map((part) => {
      const place = planets.get(part.name);
      const solids = [
        ...(place ? read.filter(({ to }) => to === 'planets') : []),
        ...read.filter(({ to }) => to === part.name),
      ];
      if (!solids.length) return part;
      const steps = solids.map(
        ({ to, solid, ...step }): Step => ({
          ...step,
          solid: to === 'planets' ? inFrame(scaled(solid, scale), place!) : scaled(solid, scale),
        }),
      );
      const inOrder = ['join', 'cut'].flatMap((one) => steps.filter(({ operation }) => operation === one));
      const alone = place !== undefined && solids.some(({ to }) => to === part.name);
      const added = inOrder.map(
        ({ operation, parameter, solid }): AddedSolid => ({
          operation,
          parameter,
          lowest: lowestOf(solid),
        }),
      );
      return { ...part, mesh: combine(part.mesh, inOrder), added, ...(alone ? { unlike: true } : {}) };
    });
  };
  change.raised = (up) => {
    const higher = read.map((one) => ({ ...one, solid: raised(one.solid, up.get(one.parameter) ?? 0) }));
    return changeOf(higher, combine);
  };
  return change;
}

function lowestOf({ positions }: Mesh): number {
  return positions.reduce((least, value, i) => (i % 3 === 2 ? Math.min(least, value) : least), Infinity);
}

function inFrame(solid: Mesh, { rotation, centre }: Place): Mesh {
  return placed(solid, rotation, centre);
}

function scaled(solid: Mesh, scale: number): Mesh {
  return scale === 1 ? solid : { ...solid, positions: solid.positions.map((value) => value * scale) };
}
