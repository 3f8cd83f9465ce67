import * as z from 'zod';
import { radians } from '../../tooth/gear.js';
import { type Rack, standardRack } from '../../tooth/racks.js';
import { degrees, follows, mm, number, word } from '../fields.js';
import { isName, namePattern } from '../name.js';
import { ROUNDING } from '../nearest.js';
import { LEAST_HELIX, MOST_GAP_PER_MODULE, ranges, transverseModules } from '../ranges.js';
import { usual } from '../usual.js';
import { type CommonLimits, completeLimits, type trainLimits } from './limits.js';
import {
  completeFilament,
  completePrinter,
  type Filament,
  filament,
  type Printer,
  printer,
} from './printing.js';

const rack = z
  .union([
    z.enum(['A', 'B', 'C', 'D']),
    z.strictObject({
      addendum: number(...ranges.addendum, {
        description: 'Addendum h_aP* of the basic rack, in normal modules',
        source: 'ISO 53: 1; range by common practice',
        examples: [1],
      }),
      dedendum: number(...ranges.dedendum, {
        description: 'Dedendum h_fP* of the basic rack, in normal modules; more than the addendum',
        source: 'ISO 53: 1.25 or 1.4; range by common practice',
        examples: [1.25],
      }),
      fillet: number(...ranges.fillet, {
        description:
          'Root fillet radius ρ_fP* of the basic rack, in normal modules, up to what the rack has room for',
        source: 'ISO 53: 0.25 … 0.39; largest by both formulas of its clause 5',
        examples: [0.3],
      }),
    }),
  ])
  .default(usual.rack)
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
    }).default(usual.helixForm),
    angle: degrees(...ranges.helixAngle, {
      description: `Helix angle at the reference cylinder: 0 for spur, from ${LEAST_HELIX} for the others`,
      source: 'common practice',
      defaultRule: Object.entries(usual.helixAngle)
        .map(([form, angle]) => `${angle} for ${form}`)
        .join(', '),
      examples: [usual.helixAngle.herringbone],
    }).optional(),
    hand: word(['right', 'left'], {
      description:
        'Hand of the sun, of the pinion or of the one gear (of its lower half when herringbone). Outside teeth that mesh have opposite hands, a ring has its mates’',
      source: 'common practice',
    }).default('right'),
  })
  .prefault({})
  .meta({ description: 'Helix of the teeth' });

const bevel = z
  .strictObject({
    angle: degrees(...ranges.bevelAngle, {
      description: 'Angle between the cone that cuts the tooth tips at the end faces and the end face',
      source: 'common practice: 45° prints without support',
    }).default(45),
    size: mm(0, 35, {
      description: 'How far the tooth tips are cut back radially at the end faces; 0 for none',
      source: 'common practice, against first-layer growth',
      ...follows(
        'the lesser of rack.addendum × module (1.4 times that with lips) + fit.gap and faceWidth / 5',
        1,
      ),
    }).optional(),
  })
  .prefault({})
  .meta({ description: 'Bevel of the tooth tips at both end faces' });

/** Play between the gears. */
export const fit = z
  .strictObject({
    gap: mm(...ranges.gap, {
      description: `Normal distance between neighbouring flanks with every part centred (half the normal backlash); at most ${MOST_GAP_PER_MODULE} × module`,
      source: 'common practice: 0.2 to 0.4 for parts printed in place',
    }).default(usual.gap),
    gapShare: number(...ranges.gapShare, {
      description:
        'Share of the gap taken from sun and ring, from the pinion, or from the one gear; the rest is taken from their mates',
      source: 'common practice: half from each side',
    }).default(usual.gapShare),
  })
  .prefault({})
  .meta({ description: 'Play between the gears' });

/** What the files of all kinds share, but for `kind` and `limits`. */
export const common = {
  name: z
    .string()
    .refine(isName)
    .optional()
    .meta({
      description: 'Base name of the files written',
      pattern: namePattern,
      maxLength: 100,
      source: 'common practice',
      ...follows('base name of the parameter file, else one after the kind', 'planetary-set'),
    }),
  module: mm(...ranges.module, {
    description: 'Normal module m_n; required unless transverseModule is given',
    source: 'range by common practice; ISO 54 lists preferred values',
    examples: [1.5],
  }).optional(),
  transverseModule: mm(...transverseModules, {
    description: `Transverse module m_t, in place of module: m_n = m_t cos β, which must be ${ranges.module.join(' to ')}`,
    source: 'ISO 21771',
    examples: [1.75],
  }).optional(),
  pressureAngle: degrees(...ranges.pressureAngle, {
    description: 'Normal pressure angle α_n',
    source: 'ISO 53: 20°; range by common practice',
  }).default(usual.pressureAngle),
  rack,
  helix,
  faceWidth: mm(...ranges.faceWidth, {
    description: 'Axial length of the teeth of every gear',
    source: 'range by common practice',
    examples: [20],
  }),
  bevel,
  fit,
  printer,
  filament,
  tolerance: mm(...ranges.tolerance, {
    description:
      'Largest distance of the mesh from the exact surface; at most 0.4 × each gap, and as fine as a million triangles allow',
    source: 'common practice: far below what a printer resolves',
    ...follows('0.01, or 0.4 × the smallest gap where that is less', 0.01),
  }).optional(),
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
};

type Shape = typeof common & { limits: typeof trainLimits };
type Common = z.output<z.ZodObject<Shape>>;

/** What a file of any kind holds, each value in its own range. Names of shipped profiles are mappings by then. */
export type CommonFile = Omit<Common, 'printer' | 'filament'> & {
  printer: Exclude<Common['printer'], string>;
  filament: Exclude<Common['filament'], string>;
};

export interface Helix extends Required<z.output<typeof helix>> {}
/** Conical cut of the tooth tips at both end faces. */
export interface Bevel extends Required<z.output<typeof bevel>> {}
/** Play between the gears. */
export interface Fit extends z.output<typeof fit> {}

/** What the files of all kinds have in common. */
export interface CommonSpec
  extends Required<Pick<CommonFile, 'name' | 'module' | 'pressureAngle' | 'faceWidth' | 'tolerance'>> {
  rack: Rack;
  helix: Helix;
  bevel: Bevel;
  fit: Fit;
  printer: Printer;
  filament: Filament;
  limits: CommonLimits;
}

/** Largest distance of a mesh from the exact surface, mm. Common practice: far below what a printer resolves. */
export const USUAL_TOLERANCE = 0.01;

/** What files of every kind hold: the form of the teeth, and the rest in the order in which it is written down. */
export function completeCommon<K extends string>(file: CommonFile & { kind: K }, name: string) {
  const helix = { ...file.helix, angle: file.helix.angle ?? usual.helixAngle[file.helix.form] };
  const module = file.module ?? normalModule(file.transverseModule!, helix.angle);
  const rack: Rack =
    typeof file.rack === 'string' ? standardRack(file.rack, radians(file.pressureAngle)) : file.rack;
  const { pressureAngle, faceWidth, fit, bevel } = file;
  const printer = completePrinter(file.printer);
  const size = bevel.size ?? Math.min(rack.addendum * module + fit.gap, faceWidth / 5);
  const rest = {
    fit: { ...fit },
    printer,
    filament: completeFilament(file.filament),
    tolerance: file.tolerance ?? USUAL_TOLERANCE,
    limits: completeLimits(file.limits, { rack, module, faceWidth, lineWidth: printer.lineWidth }),
  };
  const teeth = {
    name,
    kind: file.kind,
    module,
    pressureAngle,
    rack,
    helix,
    faceWidth,
    bevel: { angle: bevel.angle, size },
  };
  return [teeth, rest] as const;
}

/** m_n = m_t cos β; a result that misses a round figure only by the rounding of doubles is that figure. */
function normalModule(transverseModule: number, helixAngle: number): number {
  const module = transverseModule * Math.cos(radians(helixAngle));
  const round = Math.round(module * 1e6) / 1e6;
  return Math.abs(module - round) < ROUNDING ? round : module;
}
