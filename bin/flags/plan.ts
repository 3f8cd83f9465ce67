import { printerProfiles } from '../../lib/spec/profiles/printers.js';
import { ranges } from '../../lib/spec/ranges.js';
import { LINE_PER_NOZZLE, USUAL_RIM, usual } from '../../lib/spec/usual.js';
import { merits } from '../../lib/train/merit.js';
import { type Span, usualWanted } from '../../lib/train/planWanted.js';
import { text } from './text.js';

const span = ({ least, most }: Span) => `${least}-${most}`;

/** The flags of `plan`. Lengths in mm, angles in degrees. */
export const planFlags = {
  outer: text('largest diameter of the whole set, rim included, mm [what the bed holds]'),
  hole: text('diameter of a hole the set goes into, mm: the set is at most that less twice the gap across'),
  bed: text(`shorter side of the printer’s bed, mm [${printerProfiles.usual.bed.width}]`),
  planets: text(`how many planets: 5, or 3-7 [${span(usualWanted.planets)}]`),
  module: text(
    `normal module, mm: 1.5, or 1,1.3, or 1-2 for the standard ones (ISO 54) between [${span(usualWanted.module)}]`,
  ),
  'sun-teeth': text(`teeth of the sun: 15, or 12-20 [${ranges.teeth.join('-')}]`),
  'planet-teeth': text(`teeth of each planet: 15, or 12-20 [${ranges.teeth.join('-')}]`),
  'ring-teeth': text(`teeth of the ring: 45, or 40-60 [${span(usualWanted.ringTeeth)}]`),
  ratio: text('turns of input for one of output, sign aside'),
  held: text('member that stands still for the ratio: ring, carrier or sun [ring]'),
  'ratio-tolerance': text('largest departure from the ratio [2 % of it]'),
  opening: text(
    'widest angle that may stay open between the tip circles of neighbouring planets, degrees of arc',
  ),
  engagement: text(`least transverse contact ratio, teeth without gap [${usualWanted.engagement}]`),
  rim: text(`wall outside the ring’s root circle, mm [${USUAL_RIM}]`),
  gap: text(`distance between flanks, and least between planets, mm [${usual.gap}]`),
  nozzle: text(
    `nozzle diameter, mm: tooth tips must be a line of it (${LINE_PER_NOZZLE} nozzles) wide [not asked]`,
  ),
  'face-width': text(`axial length of the teeth, mm [${usualWanted.faceWidth}]`),
  helix: text(
    `spur, helical or herringbone, with an angle if need be: herringbone:25 [${usual.helixForm}:${usual.helixAngle[usual.helixForm]}]`,
  ),
  'helix-angle': text('helix angle, degrees, in place of that in --helix'),
  rack: text(
    `basic rack: ISO 53 profile A, B, C or D, or addendum,dedendum,fillet in modules: 1,1.25,0.3 [${usual.rack}]`,
  ),
  'pressure-angle': text(`normal pressure angle, degrees [${usual.pressureAngle}]`),
  shifts: text(
    'solve: sets that need profile shifts too: rings with up to 2 teeth more or fewer than sun + 2 × planet, and teeth that are undercut or do not run unshifted; a wide search takes a while [none]',
  ),
  spacing: text('nearest: planets that cannot stand at equal angles too, at the nearest places [equal]'),
  by: text(`figure of merit, the best first: ${Object.keys(merits).join(', ')} [overall]; formulas below`),
  limit: text(`most sets, and most near misses, that are shown [${usualWanted.limit}]`),
  write: text('write a row as a parameter file for make'),
  row: text('which row to write, 1 is the first [1]'),
  force: { type: 'boolean', describe: 'write over a file that is there already' },
  json: { type: 'boolean', describe: 'print one JSON document and nothing else' },
} as const;

/** What stands below the flags in the help of `plan`. */
export const planEpilogue = [
  'Examples:',
  '  cogweave plan --outer 120 --planets 5 --ratio 4',
  '      sets up to 120 mm across with five planets and a ratio of 4, the ring held',
  '  cogweave plan --hole 150 --gap 0.3 --by opening --opening 10',
  '      sets that go into a hole of 150 mm and leave openings of at most 10°',
  '  cogweave plan --sun-teeth 15 --planet-teeth 14 --planets 5 --shifts solve',
  '      sets of these teeth that need profile shifts',
  '  cogweave plan --ring-teeth 48 --spacing nearest --write my.yaml --row 2',
  '      planets at uneven angles too; the second row as a parameter file for make',
  '',
  'Figures of merit; more is better, ties are settled by overall:',
  ...Object.entries(merits).map(([name, { says }]) => `  ${name}: ${says}`),
].join('\n');
