/** A bushing and its boss giving way together, against Lamé and against what a bushing passes on of an oval. */
import { describe, expect, it } from 'vitest';
import { pairMoves } from '../../src/assembly/pairMoves.ts';

const steel = { modulus: 207000, poisson: 0.29 };
const bronze = { modulus: 105000, poisson: 0.34 };
const iron = { modulus: 169000, poisson: 0.275 };

const pair = (bushing = steel, boss = steel, inside = 90, outside = 110, far = 200) =>
  pairMoves({ inside, outside, ...bushing }, { inside: outside, outside: far, ...boss }, 120)!;

describe('a bushing and its boss', () => {
  // 90/110 in 200 mm, 0.10 mm press fit across. Lamé as in Budynas and Nisbett, Shigley's Mechanical Engineering
  // Design, equation 3-56, recomputed apart: pressure in MPa, close-in of the bore and growth of the boss across.
  it.each([
    ['steel in steel', steel, steel, 27.2042, 0.0715588, 0.0227985],
    ['bronze in steel', bronze, steel, 16.4454, 0.0852812, Number.NaN],
    ['steel in ductile iron', steel, iron, 25.4847, 0.0670359, Number.NaN],
  ])('%s presses evenly as Lamé has it', (_, bushing, boss, pressure, closed, grown) => {
    const { soft, inside, growth } = pair(bushing, boss);
    const p = 0.05 / soft[0]!;
    // Half of the last digit printed.
    expect(Math.abs(p - pressure)).toBeLessThan(5e-5);
    expect(Math.abs(2 * p * inside[0]! - closed)).toBeLessThan(5e-8);
    if (!Number.isNaN(grown)) expect(Math.abs(2 * p * growth[0]! - grown)).toBeLessThan(5e-8);
  });

  // The share of n lobes that reaches the bushing's bore while it touches all round: solved apart from the same terms;
  // half of the last digit printed.
  it.each([
    ['steel', pair(), [0.9513, 0.9323, 0.8963], 5e-5],
    ['bronze', pair(bronze), [0.975, 0.964, 0.941], 5e-4],
  ])('passes on nearly all of an oval: %s', (_, { soft, inside }, told, half) => {
    told.forEach((share, i) => {
      expect(Math.abs(inside[i + 2]! / soft[i + 2]! - share)).toBeLessThan(half);
    });
  });

  it('gives 0.0209 MPa for each micrometre of oval', () => {
    // Same solution: steel, two lobes, amplitude per side.
    expect(Math.abs(0.001 / pair().soft[2]! - 0.0209)).toBeLessThan(5e-5);
  });

  it('gives way in every number of waves, less and less with many', () => {
    for (const { soft } of [pair(), pair(bronze, iron), pair(steel, steel, 80, 110, 4000)]) {
      expect(Math.min(...soft)).toBeGreaterThan(0);
      // With many waves only the skins give way: those of two half planes, 2 (1 / E + 1 / E') c / n.
      expect(soft[60]! / soft[30]!).toBeGreaterThan(0.3);
      expect(soft[60]! / soft[30]!).toBeLessThan(0.55);
    }
    const half = (55 / 60) * 2 * (1 / 207000 + 1 / 207000);
    expect(Math.abs(pair().soft[60]! / half - 1)).toBeLessThan(1 / 60);
  });

  it('is none where a ring has no wall, or nothing is known of it', () => {
    expect(
      pairMoves(
        { inside: 110, outside: 110, ...steel },
        { inside: 110, outside: 200, ...steel },
        120,
      ),
    ).toBeNull();
    expect(
      pairMoves(
        { inside: 90, outside: 110, ...steel },
        { inside: 110, outside: 100, ...steel },
        120,
      ),
    ).toBeNull();
    expect(
      pairMoves(
        { inside: Number.NaN, outside: 110, ...steel },
        { inside: 110, outside: 200, ...steel },
        120,
      ),
    ).toBeNull();
  });
});
