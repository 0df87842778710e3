/** Room that words under a drawing take before they are laid out. CSS pixels. */

/** A letter is no wider on the average, and a line no higher, in any theme. */
const LETTER = 7.2;
const LINE = 21;

export function heightOfWords(text: string, width: number): number {
  return LINE * Math.ceil((text.length * LETTER) / Math.max(1, width)) + 6;
}
