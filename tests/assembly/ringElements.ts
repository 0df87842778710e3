/**
 * A ring of radii 1 and b under p cos(n theta), by linear finite elements along its radius: u = U cos n theta,
 * v = V sin n theta. Plane stress, E = 1. One lobe is held by an even body force, and its mean move taken out.
 */
import { Matrix, solve } from 'ml-matrix';

const GAUSS = [0.5 - Math.sqrt(3 / 5) / 2, 0.5, 0.5 + Math.sqrt(3 / 5) / 2];
const WEIGHTS = [5 / 18, 8 / 18, 5 / 18];

export function ringElements(
  b: number,
  poisson: number,
  n: number,
  on: 'bore' | 'outside',
  elements: number,
): { bore: number; outside: number } {
  const nodes = elements + 1;
  // Unknowns: U and V of every node, then how strongly the mean move along theta 0 is held (n = 1 only), or V off (n = 0).
  const held = n === 1 ? 1 : 0;
  const size = 2 * nodes + held;
  const k = Matrix.zeros(size, size);
  const f = Matrix.zeros(size, 1);
  const step = (b - 1) / elements;
  const shear = (1 - poisson) / 2;
  for (let e = 0; e < elements; e++) {
    for (let q = 0; q < 3; q++) {
      const share = GAUSS[q]!;
      const r = 1 + (e + share) * step;
      const weight = (WEIGHTS[q]! * step * r) / (1 - poisson ** 2);
      const shape = [1 - share, share];
      const slope = [-1 / step, 1 / step];
      // Strains e_r, e_theta, gamma by U0, V0, U1, V1.
      const radial: number[] = [];
      const hoop: number[] = [];
      const slide: number[] = [];
      for (const i of [0, 1]) {
        radial.push(slope[i]!, 0);
        hoop.push(shape[i]! / r, (n * shape[i]!) / r);
        slide.push((-n * shape[i]!) / r, slope[i]! - shape[i]! / r);
      }
      const place = [2 * e, 2 * e + 1, 2 * e + 2, 2 * e + 3];
      for (let i = 0; i < 4; i++) {
        for (let j = 0; j < 4; j++) {
          const stored =
            radial[i]! * radial[j]! +
            hoop[i]! * hoop[j]! +
            poisson * (radial[i]! * hoop[j]! + hoop[i]! * radial[j]!) +
            shear * slide[i]! * slide[j]!;
          k.set(place[i]!, place[j]!, k.get(place[i]!, place[j]!) + weight * stored);
        }
        if (held) {
          // The body force works on U cos^2 - V sin^2 of every place: it is what holds the mean of U - V at nothing.
          const by = WEIGHTS[q]! * step * r * shape[i >> 1]! * (i % 2 === 0 ? 1 : -1);
          k.set(place[i]!, size - 1, k.get(place[i]!, size - 1) + by);
          k.set(size - 1, place[i]!, k.get(size - 1, place[i]!) + by);
        }
      }
    }
  }
  if (n === 0) for (let i = 0; i < nodes; i++) k.set(2 * i + 1, 2 * i + 1, 1);
  if (on === 'bore') f.set(0, 0, 1);
  else f.set(2 * elements, 0, -b);
  const found = solve(k, f);
  return { bore: found.get(0, 0), outside: found.get(2 * elements, 0) };
}
