import { Refusal } from '../refusal.js';
import { resolveSpec } from '../spec/resolveSpec.js';
import { planParameters } from '../train/planParameters.js';
import type { PlanRow } from '../train/planRow.js';
import type { ResolvedWanted } from '../train/planWanted.js';

/**
 * A row as a commented parameter file, ready for `make`. It states all that the search was asked, and its comments
 * say what the search found. Lengths in mm, angles in degrees.
 * @throws Refusal where no parameter file holds such a set
 */
export function planText(row: PlanRow, wanted: ResolvedWanted): string {
  const file = planParameters(row, wanted);
  const tolerance = fittingTolerance(file);
  const { sunTeeth, planetTeeth, ringTeeth, planets, opening, ratios, engagement } = row;
  const sum = `(${sunTeeth} + ${ringTeeth}) / ${planets} = ${shown((sunTeeth + ringTeeth) / planets)}`;
  const places =
    row.spacing === 'equal'
      ? `${sum}, a whole number`
      : `${sum} is not whole: the nearest places that assemble, ${shown(100 * row.unbalance)} % off balance`;
  const { rack, helix, ring, printer } = file;
  const ringRule =
    ringTeeth === sunTeeth + 2 * planetTeeth
      ? 'sun + 2 x planets'
      : 'the shifts give both meshes one centre distance';
  const lines = [
    `# ${planets} planets of ${planetTeeth} teeth between a sun of ${sunTeeth} and a ring of ${ringTeeth}, found by cogweave plan.`,
    '# Lengths in mm, angles in degrees. Whatever is left out has a default: see `cogweave schema`.',
    '#',
    `# Outer diameter ${shown(row.outerDiameter)}; contact ratio ${shown(engagement)} (transverse).`,
    `# Turns of input for one of output: ring held ${shown(ratios.ringHeld)}, carrier held ${shown(ratios.carrierHeld)}, sun held ${shown(ratios.sunHeld)}.`,
    `# Between planets ${row.spacing === 'equal' ? '' : 'at most '}${shown(opening.arc)} degrees stay open; a straight edge drops in by ${shown(opening.drop)}.`,
    '',
    'kind: planetary',
    `module: ${row.module} # size of the teeth, in the normal section`,
    `pressureAngle: ${file.pressureAngle} # slope of the flanks`,
    `rack: { addendum: ${rack.addendum}, dedendum: ${rack.dedendum}, fillet: ${rack.fillet} } # tooth shape, in modules`,
    '',
    `helix: { form: ${helix.form}, angle: ${helix.angle}, hand: ${helix.hand} } # hand of the sun; the others follow`,
    `faceWidth: ${file.faceWidth} # height of the gears on the bed`,
    '',
    `sun: { teeth: ${sunTeeth}, profileShift: ${row.profileShifts.sun} }`,
    `planets: { teeth: ${planetTeeth}, count: ${planets}, spacing: ${row.spacing}, profileShift: ${row.profileShifts.planet} } # ${places}`,
    ring.rim === undefined
      ? `ring: { teeth: ${ringTeeth}, profileShift: ${row.profileShifts.ring} } # ${ringRule}; rim by default`
      : `ring: { teeth: ${ringTeeth}, profileShift: ${row.profileShifts.ring}, rim: ${ring.rim} } # ${ringRule}; rim: wall outside the teeth`,
    '',
    `fit: { gap: ${file.fit.gap} } # between neighbouring flanks; print a small trial before trusting any number`,
    ...printerLines(printer),
    ...(tolerance === undefined
      ? []
      : [`tolerance: ${tolerance} # coarser than usual: a set as large as this has many triangles`]),
  ];
  return `${lines.join('\n')}\n`;
}

function printerLines({ nozzle, bed }: ReturnType<typeof planParameters>['printer']): string[] {
  const parts = [
    ...(nozzle === undefined ? [] : [`nozzle: ${nozzle}`]),
    ...(bed === undefined
      ? []
      : [`bed: { width: ${bed.width}, depth: ${bed.depth}, height: ${bed.height} }`]),
  ];
  return parts.length ? [`printer: { ${parts.join(', ')} }`] : [];
}

/** The tolerance that the file must state, where the usual one would make the mesh too large. */
function fittingTolerance(file: ReturnType<typeof planParameters>): number | undefined {
  try {
    resolveSpec(file);
    return undefined;
  } catch (error) {
    if (!(error instanceof Refusal) || error.parameter !== 'tolerance') throw error;
    const tolerance = Number(error.nearest[0]);
    resolveSpec({ ...file, tolerance });
    return tolerance;
  }
}

function shown(value: number): string {
  return String(Number(value.toFixed(3)) + 0);
}
