/**
 * Minimax cylinders of a few readings at regular places, as a caliper takes them: several optima
 * lie side by side there, held by contacts of next to no weight.
 */
import { describe, it } from 'vitest';
import { type Random, seededRandom } from '../../src/num/random.ts';
import { randomDirection, squareTo } from './generated.ts';
import { CRITERIA, CYLINDERS } from './minimaxSets.ts';
import { checkStill } from './minimaxStill.ts';

const TURN = 2 * Math.PI;

/** Few readings at regular places: five to eight angles by two or three depths. */
function gridCylinder(random: Random): Float64Array[] {
  const angles = 5 + Math.floor(4 * random.uniform());
  const depths = 2 + Math.floor(2 * random.uniform());
  const radius = 10 + 40 * random.uniform();
  const direction = randomDirection(random);
  const [first, second] = squareTo(direction);
  const points = Array.from({ length: angles * depths }, (_, i) => {
    const t = ((i % angles) / angles) * TURN;
    const s = 2 * radius * (Math.floor(i / angles) / (depths - 1));
    const r = radius + 0.02 * random.normal() + 0.03 * Math.cos(2 * t);
    return [0, 1, 2].map(
      (d) => r * (Math.cos(t) * first[d]! + Math.sin(t) * second[d]!) + s * direction[d]!,
    );
  });
  return [0, 1, 2].map((d) => Float64Array.from(points, (p) => p[d]!));
}

describe('few angles by few depths', () => {
  for (const criterion of CRITERIA) {
    it(`${criterion}: 60 sets`, () => {
      const random = seededRandom(22);
      for (let set = 0; set < 60; set++) {
        const columns = gridCylinder(random);
        const [x, y, z] = columns as [Float64Array, Float64Array, Float64Array];
        const ours = CYLINDERS[criterion](x, y, z);
        if (ours.status !== 'ok') throw new Error(`set ${set}: ${ours.status}`);
        checkStill(columns, criterion, 4, ours);
      }
    });
  }
});
