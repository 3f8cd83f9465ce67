// One parameter file: made with every proof holding under another kernel, or refused with offers that work.
import { proveSet, Refusal, readSpec, resolveSpec } from 'cogweave';
import { offersOf, withChanges } from './offers.mjs';

/** Rounds of putting offers in place before a file must be whole. */
const ROUNDS = 8;

/**
 * What becomes of a file.
 * @param data plain data
 * @param text the same as it is read
 * @param kernel manifold-3d, started; `gaps`: whether it measures gaps too
 * @returns { outcome: 'made' | 'refused', faults, … }; faults is a list of sentences, empty when all is well
 */
export function examine(data, text, kernel, gaps) {
  const faults = [];
  let spec;
  try {
    spec = readSpec(text);
  } catch (error) {
    if (!(error instanceof Refusal)) return { outcome: 'crashed', faults: [`reading threw ${error.stack}`] };
    return { outcome: 'refused', by: 'file', faults: badOffers(data, error.problems) };
  }
  try {
    const { sheet, parts } = proveSet(spec);
    const failing = sheet.checks.filter(({ holds, level }) => !holds && level === 'must');
    if (failing.length) {
      for (const check of failing) faults.push(...badHelp(spec, check, failing));
      return { outcome: 'refused', by: failing.map(({ id }) => id).join(' '), faults };
    }
    return { outcome: 'made', faults: badBodies(spec, sheet, parts, kernel, gaps) };
  } catch (error) {
    if (!(error instanceof Refusal)) return { outcome: 'crashed', faults: [`proving threw ${error.stack}`] };
    faults.push(...error.problems.flatMap((problem) => badProblem(spec, problem)));
    return { outcome: 'refused', by: error.parameter, faults };
  }
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

/** A set whose teeth cannot be drawn: the refusal offers values, and one of them works. */
function badProblem(spec, { parameter, value, rule, nearest }) {
  const said = `${parameter}: ${JSON.stringify(value)}: ${rule}`;
  if (!nearest.length) return [`no offer: ${said}`];
  const works = nearest.some((offer) => works1(spec, [[parameter, offer]]));
  return works ? [] : [`no offer works: ${said}; offered ${JSON.stringify(nearest)}`];
}

/** A failing check offers something, and one of its offers makes a set. */
function badHelp(spec, check, failing) {
  const offers = offersOf(check.says);
  const said = `${check.id}: ${check.says}`;
  if (!offers.length) return [`no offer: ${said}`];
  if (offers.some((offer) => works1(spec, offer))) return [];
  return [`no offer works (with ${failing.map(({ id }) => id).join(' ')}): ${said}`];
}

function works1(spec, changes) {
  try {
    const { sheet } = proveSet(resolveSpec(withChanges(spec, changes)));
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
  const faults = [];
  const drawn = sheet.meshes[0].gap.drawn;
  const allowed = Math.max(0.03 * drawn, spec.tolerance) + 1e-4;
  const at = (name) => parts.findIndex((part) => part.name === name);
  const planets = parts.map(({ name }, i) => (name.startsWith('planet') ? i : -1)).filter((i) => i >= 0);
  for (const mate of [at('sun'), at('ring')])
    for (const planet of planets) {
      const gap = bodies[mate].minGap(bodies[planet], 3 * drawn + 0.1);
      if (Math.abs(gap - drawn) > allowed)
        faults.push(`${parts[mate].name} to ${parts[planet].name}: gap ${gap} of ${drawn}`);
    }
  return faults;
}
