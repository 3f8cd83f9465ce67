import type { GearRecord, MeshRecord } from '../../proof/sheetTypes.js';
import type { Rack } from '../../spec/types.js';
import { figure } from '../figure.js';
import type { Subject } from './subject.js';

/**
 * The data that a drawing gives of its gears, a column a gear: what defines the teeth, what calipers and pins read
 * with the gap taken off.
 * Source of the list: ISO 1340 (information to be given to the manufacturer), from memory.
 * @param item number of a part on the drawing
 */
export function gearRows(
  { records, faceWidth }: Subject,
  rack: Rack,
  pressureAngle: number,
  item: (part: string) => number,
): string[][] {
  const row = (name: string, cell: (gear: GearRecord) => string): string[] => [name, ...records.map(cell)];
  const size = (of: (gear: GearRecord) => number | null) => (gear: GearRecord) => figure(of(gear));
  return [
    row('Gear', ({ part }) => `${item(part)}  ${part}`),
    row('Number off', ({ count }) => String(count)),
    row('Teeth', ({ teeth }) => String(teeth)),
    row(
      'Normal module',
      size(({ module }) => module),
    ),
    row('Normal pressure angle', () => `${figure(pressureAngle)}°`),
    row('Rack addendum', () => `${figure(rack.addendum)} m`),
    row('Rack dedendum', () => `${figure(rack.dedendum)} m`),
    row('Rack root fillet', () => `${figure(rack.fillet)} m`),
    row('Helix angle', ({ helixAngle }) => `${figure(helixAngle)}°`),
    row('Hand', ({ hand }) => (hand === 'none' ? '–' : hand)),
    row('Profile shift coefficient', ({ profileShift }) => figure(profileShift, 4)),
    row(
      'Reference diameter',
      size(({ pitchDiameter }) => pitchDiameter),
    ),
    row(
      'Base diameter',
      size(({ baseDiameter }) => baseDiameter),
    ),
    row(
      'Tip diameter',
      size(({ tipDiameter }) => tipDiameter),
    ),
    row(
      'Root diameter',
      size(({ rootDiameter }) => rootDiameter),
    ),
    row('Face width', () => figure(faceWidth)),
    row('Teeth spanned', ({ baseTangentLength }) => figure(baseTangentLength.teethSpanned)),
    row(
      'Base tangent length',
      size(({ baseTangentLength }) => baseTangentLength.withGap),
    ),
    row(
      'Pin diameter',
      size(({ overPins }) => overPins.pin),
    ),
    row(
      'Size over pins',
      size(({ overPins }) => overPins.withGap),
    ),
  ];
}

/** The data of each mesh, a column a mesh. */
export function meshRows({ meshes }: Subject): string[][] {
  const row = (name: string, cell: (mesh: MeshRecord) => string): string[] => [name, ...meshes.map(cell)];
  return [
    row('Mesh', ({ between }) => between.join(' / ')),
    row('Centre distance', ({ centreDistance }) => figure(centreDistance)),
    row('Working pressure angle', ({ workingPressureAngle }) => `${figure(workingPressureAngle)}°`),
    row('Contact ratio, transverse + overlap', ({ transverseContactRatio, overlapRatio }) =>
      figure(transverseContactRatio + overlapRatio),
    ),
    row('Backlash, normal', ({ normalBacklash }) => figure(normalBacklash)),
  ];
}
