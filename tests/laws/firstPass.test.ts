/** A first pass takes half of what is left at most, and stops short by the give-or-take: common practice. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { firstPass } from '../../src/bore/removal.ts';

it('a first pass leaves at least half of the metal, and at least the give-or-take of it', () => {
  const mm = fc.double({ min: 0, max: 0.5, noNaN: true });
  const place = fc.record({ proud: fc.double({ min: -0.5, max: 0.5, noNaN: true }), give: mm });
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 40 }), (places) => {
      const likely = Float64Array.from(places, ({ proud }) => Math.max(0, proud));
      const sure = Float64Array.from(places, ({ proud, give }) => Math.max(0, proud - give));
      firstPass(likely, sure).forEach((pass, i) => {
        const { proud, give } = places[i]!;
        expect(pass).toBeGreaterThanOrEqual(0);
        expect(pass).toBeLessThanOrEqual(Math.max(0, proud) / 2);
        // What is left after it is half of it or the give-or-take, whichever is more; nothing is held back beyond.
        const left = Math.max(0, proud) - pass;
        const needed = proud > 0 ? Math.max(proud / 2, Math.min(proud, give)) : 0;
        expect(Math.abs(left - needed)).toBeLessThan(1e-12);
      });
    }),
  );
});

it('nothing may be ground where nothing is known to be allowed', () => {
  const pass = firstPass(Float64Array.of(Number.NaN, 0.1), Float64Array.of(Number.NaN, Number.NaN));
  expect([...pass].every(Number.isNaN)).toBe(true);
});
