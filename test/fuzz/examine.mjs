// One parameter file: made with every proof holding under another kernel, or refused with offers that work.
import { proveSet, Refusal, readSpec, resolveSpec } from 'cogweave';
import { works } from '../../dist/lib/proof/nearest/works.js';
import { measured } from './measured.mjs';
import { offersOf, withChanges } from './offers.mjs';

/** Rounds of putting offers in place before a file must be whole. */
const ROUNDS = 8;

/**
 * What becomes of a file.
 * @param asked plain data
 * @param text the same as it is read
 * @param kernel manifold-3d, started
 * @param how `gaps`: whether it measures gaps too; `quick`: build nothing unless gaps are measured, numbers and outlines
 * only, for the file and for offers; `turn` chooses which offer is built besides the nearest; all are worked out by
 * numbers and outlines
 * @returns { outcome: 'made' | 'works' | 'refused' | 'crashed', faults, cost, offers }; faults is a list of sentences,
 * empty when all is well; cost is that of reading and proving the file itself (`measured`), offers are those that were
 * built and proved to the end
 */
export function examine(asked, text, kernel, how) {
  const offers = { tried: 0, made: 0 };
  const { result, cost } = measured(() => proved(text, how));
  return { ...judged(asked, result, kernel, { ...how, offers }), cost, offers };
}

/** The file read and proved: { spec, sheet, parts }, or with `reading` or `proving` what that threw. */
function proved(text, { quick, gaps }) {
  let spec;
  try {
    spec = readSpec(text);
  } catch (reading) {
    return { reading };
  }
  try {
    if (quick && (!gaps || isHeavy(spec)) && works(spec)) return { spec };
    return { spec, ...proveSet(spec) };
  } catch (proving) {
    return { spec, proving };
  }
}

function judged(asked, { spec, sheet, parts, reading, proving }, kernel, how) {
  if (reading) {
    if (reading instanceof Refusal)
      return { outcome: 'refused', by: 'file', faults: badOffers(asked, reading.problems) };
    return { outcome: 'crashed', faults: [`reading threw ${reading.stack}`] };
  }
  if (proving) {
    if (!(proving instanceof Refusal))
      return { outcome: 'crashed', faults: [`proving threw ${proving.stack}`] };
    return {
      outcome: 'refused',
      by: proving.parameter,
      faults: badProblems(asked, proving.problems, how),
    };
  }
  if (!sheet) return { outcome: 'works', faults: [] };
  const failing = sheet.checks.filter(({ holds, level }) => !holds && level === 'must');
  if (failing.length)
    return {
      outcome: 'refused',
      by: failing.map(({ id }) => id).join(' '),
      faults: badHelp(asked, failing, how),
    };
  return { outcome: 'made', faults: badBodies(spec, sheet, parts, kernel, how.gaps) };
}

/** Offers of large sets are tried more coarsely, or a night would not do. */
function light(spec) {
  if (!isHeavy(spec)) return spec;
  const { lineWidth } = spec.printer;
  // Of a pair or a rack the tolerance decides how near to each other outlines may come.
  const coarse = coarsestOf(spec);
  return resolveSpec({ ...spec, tolerance: Math.max(spec.tolerance, Math.min(coarse, lineWidth)) });
}

function isHeavy(spec) {
  const { module, faceWidth, tolerance } = spec;
  return (
    (teethOf(spec) * Math.max(1, faceWidth / 10) * Math.sqrt(module)) / Math.sqrt(tolerance / 0.02) > 500
  );
}

/** Small enough against the gap: see lib/spec/measuredGaps.ts. */
function coarsestOf(spec) {
  const { carrier, lips, fit, printer } = spec;
  const gaps = [fit.gap, lips?.gap, carrier?.gap].filter((gap) => gap !== undefined);
  const axial = carrier?.axialGap ? [carrier.axialGap * printer.layer] : [];
  const least = Math.min(...gaps, ...gaps.map((gap) => gap + 2 * printer.growth), ...axial);
  return Math.min(spec.kind === 'planetary' ? 0.2 : 0.05, Math.floor(4000 * least) / 1e4);
}

/** All the teeth that are made. */
function teethOf({ planets, ...spec }) {
  const parts = [spec.sun, spec.ring, spec.pinion, spec.wheel, spec.bar, spec.gear];
  return parts.reduce((sum, part) => sum + (part?.teeth ?? 0), planets ? planets.count * planets.teeth : 0);
}

/** Problems of the file: each names a parameter, each offer removes its problem, all first offers together make a file. */
function badOffers(data, problems) {
  const faults = [];
  const left = (file) => {
    try {
      resolveSpec(file);
      return [];
    } catch (error) {
      if (error instanceof Refusal) return error.problems;
      throw error;
    }
  };
  for (const problem of problems) {
    const { parameter, rule, nearest } = problem;
    if (typeof parameter !== 'string' || parameter === '')
      faults.push(`no parameter: ${JSON.stringify(problem)}`);
    if (!nearest.length && !takenOut(problem) && parameter !== 'file')
      faults.push(`no offer: ${parameter}: ${rule}`);
    if (rule.startsWith('unknown key')) continue;
    for (const offer of nearest)
      if (left(withChanges(data, [[parameter, offer]])).some((other) => other.parameter === parameter))
        faults.push(`offer does not work: ${parameter} ${JSON.stringify(offer)}: ${rule}`);
  }
  let file = data;
  let rest = problems;
  for (let round = 0; rest.length && round < ROUNDS; round++) {
    if (rest.some(({ parameter }) => parameter === 'file')) break;
    file = rest.reduce(
      (mended, problem) =>
        withChanges(mended, [[problem.parameter, takenOut(problem) ? undefined : problem.nearest[0]]]),
      file,
    );
    rest = left(file);
  }
  if (rest.length && !problems.some(({ parameter }) => parameter === 'file'))
    faults.push(
      `offers lead nowhere: ${rest.map(({ parameter, rule }) => `${parameter}: ${rule}`).join('; ')}`,
    );
  return faults;
}

/** Keys that must go rather than change. */
function takenOut({ rule }) {
  return /^unknown key|must be left out|is no key/.test(rule);
}

/** Teeth that cannot be drawn: the refusal offers something, and all of it works. */
function badProblems(data, problems, how) {
  const said = problems
    .map(({ parameter, value, rule }) => `${parameter}: ${JSON.stringify(value)}: ${rule}`)
    .join(' | ');
  // Of several problems the first offers go together.
  const together = problems.map(({ parameter, nearest: [offer] }) => [parameter, offer]);
  const own = problems[0].nearest.map((offer) => [[problems[0].parameter, offer]]);
  const filled = problems.length > 1 ? [together] : own;
  const offers = [
    ...(problems.every(({ nearest }) => nearest.length) ? filled : []),
    ...problems.flatMap(({ rule }) => offersOf(rule)),
  ];
  if (!offers.length) return [`no offer: ${said}`];
  return badAmong(data, offers, how).map((offer) => `offer does not work: ${JSON.stringify(offer)}: ${said}`);
}

/** Failing checks say what would work; the first of those offers, and all that claim so, make a set. */
function badHelp(data, failing, how) {
  const said = failing.map(({ id, says }) => `${id}: ${says}`).join(' | ');
  const offers = failing.flatMap(({ says }) => offersOf(says));
  if (!offers.length) return [`no offer: ${said}`];
  return badAmong(data, offers, how).map((offer) => `offer does not work: ${JSON.stringify(offer)}: ${said}`);
}

/** Offers that do not make a set. Several checks may offer the same: each is tried once, two of them to the end. */
function badAmong(data, offers, { quick, turn, offers: tally }) {
  const one = [...new Map(offers.map((offer) => [JSON.stringify(offer), offer])).values()];
  const other = 1 + (turn % Math.max(1, one.length - 1));
  return one.filter((offer, i) => {
    const toTheEnd = !quick && (i === 0 || i === other);
    const made = makes(data, offer, !toTheEnd);
    if (toTheEnd) tally.tried++;
    if (toTheEnd && made) tally.made++;
    return !made;
  });
}

/** Whether the file with changes is made. */
function makes(data, changes, quick) {
  try {
    if (quick) return works(resolveSpec(withChanges(data, changes)));
    const { sheet } = proveSet(light(resolveSpec(withChanges(data, changes))));
    return !sheet.checks.some(({ holds, level }) => !holds && level === 'must');
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

/** What another kernel finds wrong with the bodies of a set that is said to be proved. */
function badBodies(spec, sheet, parts, kernel, gaps) {
  const faults = [];
  const bodies = parts.map(({ mesh: { positions, triangles } }) => {
    const mesh = new kernel.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(positions),
      triVerts: triangles,
    });
    return new kernel.Manifold(mesh);
  });
  bodies.forEach((body, i) => {
    const { name, mesh } = parts[i];
    if (body.status() !== 'NoError') faults.push(`${name}: ${body.status()}`);
    if (!(body.volume() > 0)) faults.push(`${name}: volume ${body.volume()}`);
    if (body.numTri() !== mesh.triangles.length / 3)
      faults.push(`${name}: ${body.numTri()} triangles of ${mesh.triangles.length / 3}`);
  });
  if (gaps && !faults.length) faults.push(...badGaps(spec, sheet, parts, bodies));
  for (const body of bodies) body.delete();
  return faults;
}

function badGaps(spec, sheet, parts, bodies) {
  if (!sheet.meshes.length) return [];
  const faults = [];
  const drawn = sheet.meshes[0].gap.drawn;
  const allowed = Math.max(0.03 * drawn, spec.tolerance) + 1e-4;
  const named = (kind) => parts.flatMap(({ name }, i) => (name.startsWith(kind) ? [i] : []));
  const mates = spec.kind === 'planetary' ? ['sun', 'ring'] : ['wheel', 'bar'];
  for (const one of named(spec.kind === 'planetary' ? 'planet' : 'pinion'))
    for (const mate of mates.flatMap(named)) {
      const gap = bodies[mate].minGap(bodies[one], 3 * drawn + 0.1);
      if (Math.abs(gap - drawn) > allowed)
        faults.push(`${parts[mate].name} to ${parts[one].name}: gap ${gap} of ${drawn}`);
    }
  return faults;
}
