/** Minimax cylinders on hundreds of sets with a known answer. */
import { describe, it } from 'vitest';
import { seededRandom } from '../../src/num/random.ts';
import { KINDS, made } from './minimaxKinds.ts';
import { checkKnown } from './minimaxKnown.ts';
import { CYLINDERS } from './minimaxSets.ts';

const SETS = 20;

describe('cylinders with a known answer', () => {
  KINDS.forEach((kind, seed) => {
    if (kind.feature !== 'cylinder') return;
    it(`${kind.criterion}, ${kind.name}: ${SETS} sets`, () => {
      const random = seededRandom(seed);
      for (let set = 0; set < SETS; set++) {
        const { asked, known } = made(random, kind);
        const [x, y, z] = known.columns as [Float64Array, Float64Array, Float64Array];
        checkKnown(asked, known, CYLINDERS[kind.criterion](x, y, z));
      }
    });
  });
});
