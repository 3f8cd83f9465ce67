import type { CarrierSizes, Plate } from '../../fit/carrier/carrierSizes.js';
import type { Contour } from '../../stack/contour.js';
import type { Mesh } from '../mesh.js';
import { stackMesh } from '../stack/stackMesh.js';
import { type Column, pinColumns, postColumns } from './columns.js';
import { plateStack } from './plate.js';

/**
 * A carrier as one closed body: plates joined by pins or posts, in the frame of the set, the lower end face of the gears
 * at z = 0.
 * @param axes of the planets, mm
 * @param tolerance largest distance of a chord from a round wall, mm
 */
export function carrierBody(sizes: CarrierSizes, axes: readonly [number, number][], tolerance: number): Mesh {
  const { plates, pin } = sizes;
  const columns = pin ? pinColumns(sizes, pin.pin, axes, tolerance) : postColumns(sizes);
  const lower = plates.find(({ side }) => side === 'below');
  const upper = plates.find(({ side }) => side === 'above');
  const stacks = [
    ...columns.map((column) => columnStack(column, lower, upper)),
    ...(lower ? [plateStack(sizes, lower, axes, columns.map(first), tolerance)] : []),
    ...(upper ? [plateStack(sizes, upper, axes, columns.map(last), tolerance)] : []),
  ];
  return stackMesh({
    walls: stacks.flatMap(({ walls }) => walls),
    faces: stacks.flatMap(({ faces }) => faces),
  });
}

const first = ({ contours }: Column): Contour => contours[0];
const last = ({ contours }: Column): Contour => contours[contours.length - 1];

/** The walls of a pin or post, and a face at each end that stands free. */
function columnStack(column: Column, lower: Plate | undefined, upper: Plate | undefined) {
  const { contours } = column;
  return {
    walls: contours.slice(1).map((to, i) => ({ from: contours[i], to, solid: 'inside' as const })),
    faces: [
      ...(lower ? [] : [{ looks: 'down' as const, outer: first(column), holes: [] }]),
      ...(upper ? [] : [{ looks: 'up' as const, outer: last(column), holes: [] }]),
    ],
  };
}
