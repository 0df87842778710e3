/** Terms: found as wholes in sentences, each with words and a picture of its own. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { TermPicture } from '../../src/drawings/terms/TermPicture.tsx';
import { TERM_IDS, termOf, termParts } from '../../src/figures/termNames.ts';
import { TERMS } from '../../src/figures/terms.ts';

const terms = (text: string) => termParts(text).flatMap(({ term }) => term ?? []);

describe('terms in sentences', () => {
  test('are found as they are written, in order, and the parts make the text again', () => {
    const text =
      'Out-of-round is 0.005 in across, give or take 0.0005; high spots stand 0.001 per side.';
    expect(terms(text)).toEqual([
      'out-of-round',
      'across',
      'give-or-take',
      'high-spot',
      'per-side',
    ]);
    expect(
      termParts(text)
        .map((part) => part.text)
        .join(''),
    ).toBe(text);
  });
  test('a longer wording is not cut short, and other words are left alone', () => {
    expect(terms('Three-lobed as well; odd lobes cannot be seen')).toEqual(['lobes', 'lobes']);
    expect(termParts('a clock pair').at(-1)).toEqual({ text: 'clock pair', term: 'clock-pair' });
    expect(terms('display, seating, targeted, acrossways, ovals of it')).toEqual([]);
    expect(termOf('Face B')).toBe('face-a');
    expect(termOf('nothing')).toBeNull();
  });
});

describe('what is said of them', () => {
  test('at least twenty, each with one to three sentences of its own', () => {
    expect(TERM_IDS.length).toBeGreaterThanOrEqual(20);
    const said = TERM_IDS.map((id) => TERMS[id].says);
    expect(new Set(said).size).toBe(TERM_IDS.length);
    for (const says of said) {
      expect(says).toMatch(/^[A-Z].*\.$/);
      expect(says.split(/[.] /).length).toBeLessThanOrEqual(3);
      expect(says.length).toBeLessThanOrEqual(230);
      // A metric shop reads it as ten times an inch shop's.
      expect(says).not.toMatch(/\btenths?\b/i);
    }
  });
  test('each has a picture of its own, with every number in it a number', () => {
    const drawn = TERM_IDS.map((id) => renderToStaticMarkup(<TermPicture term={id} />));
    expect(new Set(drawn.map((svg) => svg.replace(/aria-label="[^"]*"/, ''))).size).toBe(
      drawn.length,
    );
    for (const svg of drawn) {
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      expect(svg).toMatch(/<(path|circle|line)/);
    }
  });
});
