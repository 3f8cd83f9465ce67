import * as z from 'zod';
import { type FieldNotes, follows, mm, number, word } from '../fields.js';
import { eachFilament, filamentNames, filamentProfiles } from '../profiles/filaments.js';
import { printerNames, printerProfiles } from '../profiles/printers.js';
import { type Range, ranges } from '../ranges.js';
import { LINE_PER_NOZZLE, usual } from '../usual.js';

const machine = printerProfiles.usual;

const bedSide = (what: string, size: number) =>
  mm(...ranges.bed, { description: what, source: 'common practice, no source' }).default(size);

/** What is said once of every key that a shipped profile sets. */
const orProfile = 'or what printer.profile says';

const printerKeys = z.strictObject({
  profile: word(printerNames, {
    description: `Shipped profile that fills what is not given here: ${printerNames.map(showPrinter).join('; ')}`,
    source: 'common practice, no source',
  }).default('usual'),
  nozzle: mm(...ranges.nozzle, {
    description: `Nozzle diameter, ${orProfile}`,
    source: 'common practice',
  }).default(machine.nozzle),
  layer: mm(...ranges.layer, {
    description: `Layer height, at most the nozzle, ${orProfile}`,
    source: 'common practice: 0.2 mm, and half the nozzle for finer ones',
    ...follows('the lesser of 0.2 and printer.nozzle / 2', 0.2),
  }).optional(),
  lineWidth: mm(0.05, 6, {
    description: 'Width of one extruded line',
    source: 'common practice: a 0.4 mm nozzle lays about 0.45 mm',
    ...follows(`${LINE_PER_NOZZLE} × printer.nozzle`, 0.45),
  }).optional(),
  bed: z
    .strictObject({
      width: bedSide(`Room along x, ${orProfile}`, machine.bed.width),
      depth: bedSide(`Room along y, ${orProfile}`, machine.bed.depth),
      height: bedSide(`Room along z, ${orProfile}`, machine.bed.height),
    })
    .prefault({})
    .meta({ description: 'Room that the machine has for a print' }),
  growth: mm(...ranges.growth, {
    description:
      'How far every printed wall stands out beyond the drawn one, along its normal; drawn walls are set back by it, so that what is printed is what was asked. Measure it on a print: span or pins against the sheet, half of what they read too much. Leave it at 0 where the slicer compensates',
    source: 'common practice: 0 until measured',
  }).default(0),
  firstLayerGrowth: mm(...ranges.firstLayerGrowth, {
    description:
      'How far the first layer stands out beyond the walls above it. Nothing is drawn otherwise for it: the bevels make room, and the check first-layer says whether enough',
    source: 'common practice: 0.1 to 0.2, no source',
  }).default(usual.firstLayerGrowth),
});

/** The machine: a shipped profile by name, or its figures. */
export const printer = z
  .union([z.enum(printerNames), printerKeys])
  .prefault({})
  .meta({
    description: 'The machine it is printed on: the name of a shipped profile, or its figures',
    source: 'common practice, no source',
    defaultRule: 'usual',
  });

const byMaterial = (key: Parameters<typeof eachFilament>[0], range: Range, notes: FieldNotes) =>
  number(...range, { ...notes, defaultRule: `by filament.material: ${eachFilament(key)}` }).optional();

const filamentKeys = z.strictObject({
  material: word(filamentNames, {
    description: 'What it is printed of; figures that are not given here are typical of it',
    source: 'common practice',
  }).default('PLA'),
  shrinkage: number(...ranges.shrinkage, {
    description: `How much smaller a print is than drawn, in percent, along all three axes alike; the set is drawn larger by 1 / (1 − shrinkage / 100). Applied only when given; typical: ${eachFilament('typicalShrinkage')}. Leave it at 0 where the slicer compensates`,
    unit: '%',
    source: 'common practice, no source: 0 until measured',
  }).default(0),
  modulus: byMaterial('modulus', [1, 50_000], {
    description: "Young's modulus along the layers",
    unit: 'MPa',
    source:
      'the lowest published of each kind: PLA from an ISO 527 data sheet of printed bars (solid PLA has about 3500), PETG and ABS from MDPI Processes 13 (2025) 2733; ASA common practice',
  }),
  strength: byMaterial('strength', [0.1, 1000], {
    description: 'Stress along the layers at which a printed wall breaks',
    unit: 'MPa',
    source: 'common practice, no source',
  }),
  poisson: number(0, 0.49, {
    description: "Poisson's ratio",
    source: 'common practice, no source',
  }).default(usual.poisson),
  glassTransition: byMaterial('glassTransition', [20, 300], {
    description: 'Glass transition, above which it softens',
    unit: '°C',
    source:
      'the lowest published of each kind: PLA from npj Materials Degradation s41529-025-00724-1, ABS from MDPI Processes 13 (2025) 2733; PETG and ASA common practice',
  }),
  dryingTemperature: byMaterial('dryingTemperature', [20, 200], {
    description: 'Temperature at which the filament is dried, below its glass transition',
    unit: '°C',
    source: 'common practice, no source',
  }),
});

/** The filament: a material by name, or its figures. */
export const filament = z
  .union([z.enum(filamentNames), filamentKeys])
  .prefault({})
  .meta({
    description: 'What it is printed of: the name of a material, or its figures',
    source: 'common practice',
    defaultRule: 'PLA',
  });

/** The machine. Lengths in mm; `profile` filled what the file did not give. */
export interface Printer extends Required<z.output<typeof printerKeys>> {}

/** What it is printed of. */
export interface Filament extends Required<z.output<typeof filamentKeys>> {}

/** The machine with its defaults. */
export function completePrinter(file: z.output<typeof printerKeys>): Printer {
  const { nozzle, layer = Math.min(0.2, nozzle / 2), lineWidth = LINE_PER_NOZZLE * nozzle } = file;
  return { ...file, layer, lineWidth };
}

/** The filament with its defaults. */
export function completeFilament(file: z.output<typeof filamentKeys>): Filament {
  const { material, shrinkage, poisson } = file;
  const { modulus, strength, glassTransition, dryingTemperature } = {
    ...filamentProfiles[material],
    ...file,
  };
  return { material, shrinkage, modulus, strength, poisson, glassTransition, dryingTemperature };
}

function showPrinter(name: (typeof printerNames)[number]): string {
  const { nozzle, layer, bed } = printerProfiles[name];
  return `${name} (nozzle ${nozzle}, layer ${layer}, bed ${bed.width} × ${bed.depth} × ${bed.height})`;
}
