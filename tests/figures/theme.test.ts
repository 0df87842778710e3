import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contrast, paletteOf, type Theme } from '../../src/figures/colour.ts';

const CSS = readFileSync(join(import.meta.dirname, '../../src/app/theme.css'), 'utf8');

/** The plain colours of a theme, as the page's style sheet has them. */
function coloursOf(theme: Theme): Readonly<Record<string, string>> {
  const head = theme === 'light' ? ':root {' : `:root[data-theme="${theme}"] {`;
  const from = CSS.indexOf(head);
  expect(from, head).toBeGreaterThanOrEqual(0);
  const block = CSS.slice(from, CSS.indexOf('}', from));
  const found = [...block.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name, colour]) => [
    name,
    colour,
  ]);
  return Object.fromEntries(found) as Record<string, string>;
}

const THEMES: readonly Theme[] = ['light', 'dark', 'sunlight'];
const GROUNDS = ['paper', 'card', 'accent-ground'];

// Ratios: WCAG 2.2, success criteria 1.4.3 (text, 4.5 to 1) and 1.4.11 (what carries meaning, 3 to 1).
describe.each(THEMES)('the page in %s', (theme) => {
  const colours = coloursOf(theme);

  it('names a colour for everything that the light page does', () => {
    expect(Object.keys(colours).sort()).toEqual(Object.keys(coloursOf('light')).sort());
  });

  it.each(['ink', 'ink-soft', 'copper-text', 'teal-text', 'alarm'])('%s can be read', (text) => {
    for (const ground of GROUNDS) {
      expect(contrast(colours[text]!, colours[ground]!), ground).toBeGreaterThanOrEqual(4.5);
    }
  });

  it.each(['line-strong', 'copper', 'teal'])('%s can be told from the ground', (line) => {
    for (const ground of GROUNDS) {
      expect(contrast(colours[line]!, colours[ground]!), ground).toBeGreaterThanOrEqual(3);
    }
  });

  it('and its drawings have the same grounds: frames and letters can be told', () => {
    const { ink, inkSoft, frame, copperText, tealText } = paletteOf(theme);
    for (const ground of GROUNDS) {
      for (const text of [ink, inkSoft, copperText, tealText]) {
        expect(contrast(text, colours[ground]!), `${text} ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
      expect(contrast(frame, colours[ground]!), ground).toBeGreaterThanOrEqual(3);
    }
  });
});

describe('sunlight', () => {
  it('is black on white, at least 7 to 1 for every word', () => {
    const colours = coloursOf('sunlight');
    expect([colours.ink, colours.paper]).toEqual(['#000000', '#ffffff']);
    for (const text of ['ink-soft', 'copper-text', 'teal-text', 'alarm']) {
      expect(contrast(colours[text]!, '#ffffff'), text).toBeGreaterThanOrEqual(7);
    }
  });
});
