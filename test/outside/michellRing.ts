/**
 * A free plane ring under normal pressure on its rims, solved exactly in plane stress, one Fourier mode at a time.
 * Knows nothing of beams. Source: J. H. Michell 1899; stresses and displacements of each term as tabulated in
 * J. R. Barber, Elasticity, chapter 9 (from memory).
 */
export interface PlaneRing {
  inner: number;
  outer: number;
  width: number;
  modulus: number;
  poisson: number;
}

/**
 * Radial movement, mm, outward, at polar angle `at` and radius `radius` under forces W, N, that push outward
 * (negative: inward) on one rim at `count` equal angles, the first at 0. Radii are scaled by the outer one.
 */
export function radialMovement(
  ring: PlaneRing,
  count: number,
  force: number,
  rim: 'inner' | 'outer',
  at: number,
  radius: number,
): number {
  const { outer, width, modulus, poisson } = ring;
  const a = ring.inner / outer;
  const r = radius / outer;
  const mu = modulus / (2 * (1 + poisson));
  const kappa = (3 - poisson) / (1 + poisson);
  // σ_rr that each force puts on its rim, as Fourier coefficients: an outward push is pressure on the inner rim,
  // and a pull on the outer one.
  const spread = force / (width * (rim === 'inner' ? ring.inner : outer));
  const sign = rim === 'inner' ? -1 : 1;
  const constant = (sign * spread * count) / (2 * Math.PI);
  const [innerPush, outerPull] = rim === 'inner' ? [constant, 0] : [0, constant];
  // Lamé: σ_rr = A + B/r².
  const B = (innerPush - outerPull) / (1 / a ** 2 - 1);
  const A = outerPull - B;
  let movement = ((1 - poisson) * A * r - ((1 + poisson) * B) / r) / modulus;
  for (let n = count; n <= 60 * count; n += count) {
    const load = (sign * spread * count) / Math.PI;
    // r^n, r^(n+2), r^-n, r^(2-n); the latter two scaled so that they are 1 on the inner rim.
    const terms = [
      { p: n - 2, base: 1, rr: -n * (n - 1), rt: n * (n - 1), u: -n },
      { p: n, base: 1, rr: -(n + 1) * (n - 2), rt: n * (n + 1), u: kappa - n - 1 },
      { p: -n - 2, base: a, rr: -n * (n + 1), rt: -n * (n + 1), u: n },
      { p: -n, base: a, rr: -(n + 2) * (n - 1), rt: -n * (n - 1), u: kappa + n - 1 },
    ];
    const row = (x: number, key: 'rr' | 'rt') => terms.map((term) => term[key] * (x / term.base) ** term.p);
    const solution = solve(
      [row(a, 'rr'), row(1, 'rr'), row(a, 'rt'), row(1, 'rt')],
      [rim === 'inner' ? load : 0, rim === 'outer' ? load : 0, 0, 0],
    );
    const u = terms.reduce((sum, term, i) => sum + solution[i] * term.u * r * (r / term.base) ** term.p, 0);
    movement += (u / (2 * mu)) * Math.cos(n * at);
  }
  return movement * outer;
}

function solve(rows: number[][], right: number[]): number[] {
  const m = rows.map((row, i) => [...row, right[i]]);
  for (let i = 0; i < m.length; i++) {
    let pivot = i;
    for (let j = i; j < m.length; j++) if (Math.abs(m[j][i]) > Math.abs(m[pivot][i])) pivot = j;
    [m[i], m[pivot]] = [m[pivot], m[i]];
    for (let j = 0; j < m.length; j++) {
      if (j === i) continue;
      const factor = m[j][i] / m[i][i];
      for (let k = i; k <= m.length; k++) m[j][k] -= factor * m[i][k];
    }
  }
  return m.map((row, i) => row[m.length] / row[i]);
}
