// Build and STL of the reference set against other ways to the same bodies, all in this process.
import { encodeStl } from 'cogweave';
import { fitTrain } from '../../../dist/lib/fit/train/fitTrain.js';
import { trainNumbers } from '../../../dist/lib/fit/train/trainNumbers.js';
import { proveSet } from '../../../dist/lib/proof/proveSet.js';
import { buildTrain, sweepOf } from '../../../dist/lib/solid/buildTrain.js';
import { twistRate } from '../../../dist/lib/solid/sweep/helix.js';
import { gearOutline } from '../../../dist/lib/tooth/outline.js';
import { median } from '../timing.mjs';
import { jscadRun } from './jscadSet.mjs';
import { kernelSet } from './kernelSet.mjs';
import { coarsestExtrude } from './plainExtrude.mjs';

/** Compares; `ours` is the median time of build and STL, ms. */
export function compare(spec, ours) {
  const train = fitTrain(trainNumbers(spec));
  const deviation = proveSet(spec).sheet.checks.find(({ id }) => id === 'helix-accuracy').value;
  const half = spec.faceWidth / 2;
  const kinds = train.gears.map((gear) => {
    const { part, profile } = gear;
    const sweep = sweepOf(train, gear);
    const coarsest = coarsestExtrude(profile, sweep, deviation);
    const points = gearOutline(profile, coarsest.sagitta).points;
    const way = sweep.hand === 'right' ? 1 : -1;
    return {
      ...coarsest,
      outline: Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i], way * points[2 * i + 1]]),
      twist: (way * twistRate(profile, sweep) * half * 180) / Math.PI,
      half,
      internal: profile.gear.internal,
      bevelSize: sweep.bevelSize,
      tipRadius: profile.tipRadius,
      bore: part === 'sun' ? spec.sun.bore.diameter / 2 : 0,
      rim: profile.rootRadius + spec.ring.rim,
      places:
        part === 'planet' ? gear.places.map(({ rotation, centre }) => [rotation, ...centre]) : [[0, 0, 0]],
    };
  });
  for (const kind of kinds) if (kind.twist < 0) kind.outline.reverse();
  const teethOurs = toothed(buildTrain(train), spec);
  const teethTheirs = kinds.reduce((sum, { triangles, places }) => sum + triangles * places.length, 0);
  const kernelMs = median(() => {
    const meshes = kernelSet(kinds);
    return encodeStl(meshes.map(asPart));
  }, 3);

  const [sun] = train.gears;
  const { profile } = sun;
  const twist = twistRate(profile, sweepOf(train, sun)) * half;
  const runs = [
    [0.2, 4],
    [0.1, 8],
  ].map(([sagitta, levels]) => jscadRun(profile, half, twist, sagitta, levels, 4));
  const power = Math.log(runs[1].ms / runs[0].ms) / Math.log(runs[1].triangles / runs[0].triangles);
  const sunTriangles = kinds[0].triangles;
  const jscadMs = kinds.reduce(
    (sum, { triangles, places }) =>
      sum + runs[1].ms * (triangles / runs[1].triangles) ** power * (places.length ? 1 : 0),
    0,
  );
  return {
    deviation,
    triangles: { cogweave: teethOurs, plainExtrude: teethTheirs, share: teethOurs / teethTheirs },
    kernel: { ms: kernelMs, ratio: ours / kernelMs },
    jscad: { runs, power, sunTriangles, extrapolatedMs: jscadMs, timesSlower: jscadMs / ours },
  };
}

/** Triangles on toothed sides: all but end faces, bores and rims. */
function toothed(parts, { faceWidth }) {
  let count = 0;
  for (const { name, mesh } of parts) {
    const { positions: p, triangles: t } = mesh;
    for (let i = 0; i < t.length; i += 3) {
      const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
      const z = p[a + 2];
      if (z === p[b + 2] && z === p[c + 2] && (z === 0 || z === faceWidth)) continue;
      const span = [a, b, c].every((k) => p[k + 2] === 0 || p[k + 2] === faceWidth);
      if (!(span && (name === 'sun' || name === 'ring'))) count++;
    }
  }
  return count;
}

function asPart({ vertProperties, triVerts, numProp }, i) {
  const positions = new Float64Array((vertProperties.length / numProp) * 3);
  for (let v = 0; v < positions.length / 3; v++)
    positions.set(vertProperties.subarray(numProp * v, numProp * v + 3), 3 * v);
  return { name: `part-${i}`, mesh: { positions, triangles: triVerts } };
}
