import * as z from 'zod';
import { number, word } from './fields.js';
import { isName, namePattern } from './name.js';
import { carrier, planets, retention, ring, sun } from './schemaGears.js';

const rack = z
  .union([
    z.enum(['A', 'B', 'C', 'D']),
    z.strictObject({
      addendum: number(0.5, 1.5, {
        description: 'Addendum h_aP* of the basic rack, in normal modules',
        source: 'ISO 53: 1; range by common practice',
        examples: [1],
      }),
      dedendum: number(0.5, 2, {
        description: 'Dedendum h_fP* of the basic rack, in normal modules; more than the addendum',
        source: 'ISO 53: 1.25 or 1.4; range by common practice',
        examples: [1.25],
      }),
      fillet: number(0, 1, {
        description:
          'Root fillet radius ρ_fP* of the basic rack, in normal modules, up to what the rack has room for',
        source: 'ISO 53: 0.25 … 0.39; largest by both formulas of its clause 5',
        examples: [0.3],
      }),
    }),
  ])
  .default('B')
  .meta({
    description:
      'Basic rack: a standard profile A, B, C or D, or its own sizes in normal modules. The profiles are standardised for 20°; at other pressure angles the fillet is made smaller where it would not fit',
    source: 'ISO 53:1998 table A.1; B is its profile for normal service',
  });

const helix = z
  .strictObject({
    form: word(['spur', 'helical', 'herringbone'], {
      description: 'Straight teeth, one helix, or two mirrored helices that meet at mid face',
      source: 'common practice: herringbone holds the planets in axially',
    }).default('herringbone'),
    angle: number(0, 45, {
      description: 'Helix angle at the reference cylinder: 0 for spur, from 1 for the others',
      unit: 'deg',
      source: 'common practice',
      defaultRule: '30 for herringbone, 20 for helical, 0 for spur',
      examples: [30],
    }).optional(),
    hand: word(['right', 'left'], {
      description:
        'Hand of the sun (of its lower half when herringbone); planets and ring have the other one',
      source: 'common practice',
    }).default('right'),
  })
  .prefault({})
  .meta({ description: 'Helix of the teeth' });

const bevel = z
  .strictObject({
    angle: number(30, 60, {
      description: 'Angle between the cone that cuts the tooth tips at the end faces and the end face',
      unit: 'deg',
      source: 'common practice: 45° prints without support',
    }).default(45),
    size: number(0, 35, {
      description: 'How far the tooth tips are cut back radially at the end faces; 0 for none',
      unit: 'mm',
      source: 'common practice, against first-layer growth',
      defaultRule: 'the lesser of rack.addendum × module + fit.gap and faceWidth / 8',
      examples: [1],
    }).optional(),
  })
  .prefault({})
  .meta({ description: 'Bevel of the tooth tips at both end faces' });

const fit = z
  .strictObject({
    gap: number(0.02, 2, {
      description:
        'Normal distance between neighbouring flanks with every part centred (half the normal backlash); at most 0.6 × module',
      unit: 'mm',
      source: 'common practice: 0.2 to 0.4 for parts printed in place',
    }).default(0.25),
    gapShare: number(0, 1, {
      description: 'Share of the gap taken from sun and ring; the rest is taken from the planets',
      source: 'common practice: half from each side',
    }).default(0.5),
  })
  .prefault({})
  .meta({ description: 'Play between the gears' });

const printer = z
  .strictObject({
    nozzle: number(0.1, 2, {
      description: 'Nozzle diameter',
      unit: 'mm',
      source: 'common practice',
    }).default(0.4),
    layer: number(0.02, 1.5, {
      description: 'Layer height, at most the nozzle',
      unit: 'mm',
      source: 'common practice: 0.2 mm, and half the nozzle for finer ones',
      defaultRule: 'the lesser of 0.2 and printer.nozzle / 2',
      examples: [0.2],
    }).optional(),
    lineWidth: number(0.05, 6, {
      description: 'Width of one extruded line',
      unit: 'mm',
      source: 'common practice: a 0.4 mm nozzle lays about 0.45 mm',
      defaultRule: '1.125 × printer.nozzle',
      examples: [0.45],
    }).optional(),
  })
  .prefault({})
  .meta({ description: 'The machine it is printed on' });

const limits = z
  .strictObject({
    contactRatio: number(1, 4, {
      description: 'Total contact ratio below which a mesh is marked',
      source: 'common practice: at least 1.2',
    }).default(1.2),
    toothFeature: number(0, 10, {
      description: 'Least tip thickness and root space',
      unit: 'mm',
      source: 'common practice: one line',
      defaultRule: 'printer.lineWidth',
      examples: [0.45],
    }).optional(),
    wall: number(0, 20, {
      description: 'Least tooth thickness and wall',
      unit: 'mm',
      source: 'common practice: two lines',
      defaultRule: '2 × printer.lineWidth',
      examples: [0.9],
    }).optional(),
    rim: number(0, 100, {
      description: 'Least wall of the ring outside its root circle',
      unit: 'mm',
      source: 'common practice: 1.2 times the tooth depth',
      defaultRule: '1.2 × (rack.addendum + rack.dedendum) × module',
      examples: [4],
    }).optional(),
  })
  .prefault({})
  .meta({ description: 'Limits that the checks hold the set against' });

/** The parameter file. Lengths in mm, angles in degrees; fixed defaults are filled in, derived ones are not. */
export const fileSchema = z
  .strictObject({
    name: z
      .string()
      .refine(isName)
      .optional()
      .meta({
        description: 'Base name of the files written',
        pattern: namePattern,
        maxLength: 100,
        source: 'common practice',
        defaultRule: 'base name of the parameter file, else planetary-set',
        examples: ['planetary-set'],
      }),
    kind: word(['planetary'], {
      description: 'What is made',
      source: 'this version',
      examples: ['planetary'],
    }),
    module: number(0.2, 20, {
      description: 'Normal module m_n; required unless transverseModule is given',
      unit: 'mm',
      source: 'range by common practice; ISO 54 lists preferred values',
      examples: [1.5],
    }).optional(),
    transverseModule: number(0.2, 28.3, {
      description: 'Transverse module m_t, in place of module: m_n = m_t cos β, which must be 0.2 to 20',
      unit: 'mm',
      source: 'ISO 21771',
      examples: [1.75],
    }).optional(),
    pressureAngle: number(14, 30, {
      description: 'Normal pressure angle α_n',
      unit: 'deg',
      source: 'ISO 53: 20°; range by common practice',
    }).default(20),
    rack,
    helix,
    faceWidth: number(1, 300, {
      description: 'Axial length of the teeth of every gear',
      unit: 'mm',
      source: 'range by common practice',
      examples: [20],
    }),
    bevel,
    profileShift: word(['none'], {
      description: 'none: the shifts are those given for each gear',
      source: 'this version',
    }).default('none'),
    sun,
    planets,
    ring,
    fit,
    printer,
    carrier,
    retention,
    tolerance: number(0.0005, 0.2, {
      description:
        'Largest distance of the mesh from the exact surface; as fine as about three million triangles allow',
      unit: 'mm',
      source: 'common practice: far below what a printer resolves',
    }).default(0.01),
    limits,
    variants: z
      .unknown()
      .optional()
      .meta({
        description:
          'Variants of this file: a mapping from parameter (dotted path) to the values to combine, or a list of mappings of overrides. Checked here, made by batch',
        source: 'this version',
        anyOf: [
          { type: 'object', additionalProperties: { type: 'array', minItems: 1 } },
          { type: 'array', minItems: 1, items: { type: 'object' } },
        ],
      }),
  })
  .meta({
    title: 'Parameter file of cogweave',
    description: 'Lengths in mm, angles in degrees',
    oneOf: [{ required: ['module'] }, { required: ['transverseModule'] }],
  });

/** A parameter file whose every value is in its own range; rules between values are still to be checked. */
export type FileSpec = z.output<typeof fileSchema>;
