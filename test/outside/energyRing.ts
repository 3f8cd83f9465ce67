import type { RingSize } from '../../lib/fit/ring/section.js';

/** What Castigliano's theorem gives; mm and N mm, movement outward, moments positive where they pull on the inside. */
export interface EnergyRing {
  underLoad: number;
  midway: number;
  momentUnderLoad: number;
  momentMidway: number;
}

/**
 * A ring under equal outward forces at equal angles, by strain energy alone. The wall is cut into fibres, each a
 * plane section staying plane; its stiffness against stretching and turning is summed over the fibres, and the
 * energy over the angle, both numerically. Nothing of Roark's factors or of closed forms enters.
 */
export function energyRing(size: RingSize, count: number, force: number): EnergyRing {
  const { meanRadius: R, depth, width, modulus: E, poisson = 0.36 } = size;
  const G = E / (2 * (1 + poisson));
  // Per unit of angle: fibre at radius r = R + y is r long; it stretches by e + k y. Hence N = ∫E(e + k y)/r dA …
  const FIBRES = 2000;
  let [a, b, c] = [0, 0, 0];
  for (let i = 0; i < FIBRES; i++) {
    const y = depth * ((i + 0.5) / FIBRES - 0.5);
    const share = (E * width * depth) / FIBRES / (R + y);
    a += share;
    b += share * y;
    c += share * y * y;
  }
  const det = a * c - b * b;
  const shear = (1.2 * R) / (G * width * depth);

  const half = Math.PI / count;
  /** Work of one state (hoop, moment pulling on the outside, shear) through the strain of another, half an arc. */
  const STEPS = 400;
  type State = (t: number) => [number, number, number];
  const work = (one: State, two: State): number => {
    let sum = 0;
    for (let i = 0; i < STEPS; i++) {
      // Gauss with two points a step.
      for (const s of [0.5 - 0.5 / Math.sqrt(3), 0.5 + 0.5 / Math.sqrt(3)]) {
        const t = (half * (i + s)) / STEPS;
        const [n1, m1, v1] = one(t);
        const [n2, m2, v2] = two(t);
        sum += ((c * n1 * n2 - b * (n1 * m2 + m1 * n2) + a * m1 * m2) / det + shear * v1 * v2) / 2;
      }
    }
    return (sum * half) / STEPS;
  };
  // t runs from midway (0) to a force (half). Outward pushes W at `half` and Q midway leave, at the cut midway, a
  // hoop force H = (W + Q cos half) / (2 sin half), a radial force Q/2 and a moment that the theorem finds: it lets
  // the cut not turn. The rest is the balance of the piece from 0 to t.
  const state = (W: number, Q: number): State => {
    const H = (W + Q * Math.cos(half)) / (2 * Math.sin(half));
    return (t) => [
      H * Math.cos(t) + (Q / 2) * Math.sin(t),
      H * R * (1 - Math.cos(t)) - (Q / 2) * R * Math.sin(t),
      H * Math.sin(t) - (Q / 2) * Math.cos(t),
    ];
  };
  const couple: State = () => [0, 1, 0];
  const closed = (W: number, Q: number): State => {
    const open = state(W, Q);
    const moment = -work(open, couple) / work(couple, couple);
    return (t) => {
      const [n, m, v] = open(t);
      return [n, m + moment, v];
    };
  };
  const loaded = closed(force, 0);
  // ∂U/∂W; each force has a half arc on both sides.
  return {
    underLoad: 2 * work(loaded, closed(1, 0)),
    midway: 2 * work(loaded, closed(0, 1)),
    momentUnderLoad: -loaded(half)[1],
    momentMidway: -loaded(0)[1],
  };
}
