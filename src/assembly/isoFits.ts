/**
 * Limits of ISO 286-1 for holes H and the shafts of running and press fits, 0 to 500 mm. Micrometres inside, as the tables
 * are printed; tabulated, since the standard's formulas and its rounded tables differ in places.
 */

/** Main steps of size, mm: over the one before, up to and with this. */
const STEPS = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500] as const;

/** Standard tolerances of the grades. IT6 to IT9 as printed; IT5, IT10 and IT11 from memory, held to the formula. */
const GRADES = {
  5: [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27],
  6: [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40],
  7: [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63],
  8: [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97],
  9: [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155],
  10: [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250],
  11: [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400],
} as const;
export type Grade = keyof typeof GRADES;

/** Letters of shafts; of f and g the upper limit stands in the table, of the others the lower. */
const LETTERS = ['f', 'g', 'k', 'm', 'n', 'p', 'r', 's', 'u'] as const;
export type ShaftLetter = (typeof LETTERS)[number];

/**
 * Steps for shafts: over, up to and with, then by letter. Read in print to about 200 mm (r, s, u to 180); larger rows from
 * memory, all within 3 µm of the standard's formulas. k holds for grades 4 to 7.
 */
const SHAFTS: readonly (readonly number[])[] = [
  [3, 6, -10, -4, 1, 4, 8, 12, 15, 19, 23],
  [6, 10, -13, -5, 1, 6, 10, 15, 19, 23, 28],
  [10, 18, -16, -6, 1, 7, 12, 18, 23, 28, 33],
  [18, 24, -20, -7, 2, 8, 15, 22, 28, 35, 41],
  [24, 30, -20, -7, 2, 8, 15, 22, 28, 35, 48],
  [30, 40, -25, -9, 2, 9, 17, 26, 34, 43, 60],
  [40, 50, -25, -9, 2, 9, 17, 26, 34, 43, 70],
  [50, 65, -30, -10, 2, 11, 20, 32, 41, 53, 87],
  [65, 80, -30, -10, 2, 11, 20, 32, 43, 59, 102],
  [80, 100, -36, -12, 3, 13, 23, 37, 51, 71, 124],
  [100, 120, -36, -12, 3, 13, 23, 37, 54, 79, 144],
  [120, 140, -43, -14, 3, 15, 27, 43, 63, 92, 170],
  [140, 160, -43, -14, 3, 15, 27, 43, 65, 100, 190],
  [160, 180, -43, -14, 3, 15, 27, 43, 68, 108, 210],
  [180, 200, -50, -15, 4, 17, 31, 50, 77, 122, 236],
  [200, 225, -50, -15, 4, 17, 31, 50, 80, 130, 258],
  [225, 250, -50, -15, 4, 17, 31, 50, 84, 140, 284],
  [250, 280, -56, -17, 4, 20, 34, 56, 94, 158, 315],
  [280, 315, -56, -17, 4, 20, 34, 56, 98, 170, 350],
  [315, 355, -62, -18, 4, 21, 37, 62, 108, 190, 390],
  [355, 400, -62, -18, 4, 21, 37, 62, 114, 208, 435],
  [400, 450, -68, -20, 5, 23, 40, 68, 126, 232, 490],
  [450, 500, -68, -20, 5, 23, 40, 68, 132, 252, 540],
];

/** Lower and upper limit over the basic size, mm across. */
export interface Limits {
  readonly lower: number;
  readonly upper: number;
}

const NONE: Limits = { lower: Number.NaN, upper: Number.NaN };

/** Tolerance of a grade at a size, mm; NaN outside the table. */
export function toleranceOf(mm: number, grade: Grade): number {
  const step = mm > 0 ? STEPS.findIndex((to) => mm <= to) : -1;
  return step < 0 ? Number.NaN : GRADES[grade][step]! / 1000;
}

/** A hole H: from the basic size up. */
export function holeLimits(mm: number, grade: Grade): Limits {
  const upper = toleranceOf(mm, grade);
  return Number.isNaN(upper) ? NONE : { lower: 0, upper };
}

/** NaN outside the table: up to 3 mm, and over 500. */
export function shaftLimits(mm: number, letter: ShaftLetter, grade: Grade): Limits {
  const row = SHAFTS.find(([over, to]) => mm > over! && mm <= to!);
  const width = toleranceOf(mm, grade);
  if (row === undefined) return NONE;
  const edge = row[2 + LETTERS.indexOf(letter)]! / 1000;
  return edge < 0 ? { lower: edge - width, upper: edge } : { lower: edge, upper: edge + width };
}
