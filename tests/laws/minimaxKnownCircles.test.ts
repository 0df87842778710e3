/** Minimax circles on hundreds of sets with a known answer. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/num/random.ts';
import { bestOfAllRings } from './minimaxBrute.ts';
import { KINDS, made } from './minimaxKinds.ts';
import { checkKnown } from './minimaxKnown.ts';
import { CIRCLES } from './minimaxSets.ts';

const SETS = 30;

describe('circles with a known answer', () => {
  KINDS.forEach((kind, seed) => {
    if (kind.feature !== 'circle') return;
    it(`${kind.criterion}, ${kind.name}: ${SETS} sets`, () => {
      const random = seededRandom(seed);
      for (let set = 0; set < SETS; set++) {
        const { asked, known } = made(random, kind);
        checkKnown(asked, known, CIRCLES[kind.criterion](known.columns[0]!, known.columns[1]!));
      }
    });
  });
});

it('no other ring through four points is narrower than the known ones', () => {
  const small = KINDS.filter(
    ({ feature, criterion, off, twice, name }) =>
      feature === 'circle' &&
      criterion === 'minimum-zone' &&
      off === 1 &&
      !twice &&
      !/thousands|10 degrees/.test(name),
  );
  expect(small.length).toBeGreaterThan(5);
  for (const [seed, kind] of small.entries()) {
    for (let set = 0; set < 2; set++) {
      const { known } = made(seededRandom(10 * seed + set), kind);
      const least = bestOfAllRings(known.columns[0]!, known.columns[1]!);
      expect(Math.abs(least - known.range)).toBeLessThan(1e-11);
    }
  }
});
