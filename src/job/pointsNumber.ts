/** Numbers from the bytes of a cell: the correctly rounded double, without making a string of it. */

const POINT = 46;
const ZERO = 48;
/** A whole number of this many digits is an exact double. */
const EXACT_DIGITS = 15;
/** Digits gathered in one 32-bit integer, which is quicker than a double. */
const PIECE = 9;
/** Digits that are taken in without the language's own reading: the last 15 are exact. */
const MOST_DIGITS = PIECE + EXACT_DIGITS;
/** Powers of ten up to this one are exact doubles. */
const EXACT_POWER = 22;
/** Powers of ten up to this one, either way, are held to twice a double's digits. */
const POWERS = 64;
/** No double needs as many characters; what is longer is no number that anything wrote. */
const LONGEST = 4000;

const TEXT = new TextDecoder();

/** Space, tab, either byte of a line end. */
export function isBlank(byte: number): boolean {
  return byte === 32 || byte === 9 || byte === 13 || byte === 10;
}

/**
 * The number in a cell, such as `25.013`, `-.5` or `1.2e-5`, blanks around it allowed: the same
 * double as `Number` gives for the text. NaN when it is none; infinite when it is too large.
 *
 * @param from first byte of the cell
 * @param stop one past its last byte
 */
export function numberIn(bytes: Uint8Array, from: number, stop: number): number {
  let first = from;
  let last = stop;
  while (first < last && isBlank(bytes[first]!)) first++;
  while (last > first && isBlank(bytes[last - 1]!)) last--;
  if (first === last) return Number.NaN;
  const negative = bytes[first] === 45;
  let at = negative || bytes[first] === 43 ? first + 1 : first;
  let high = 0;
  let middle = 0;
  let low = 0;
  let digits = 0;
  let figures = 0;
  let pointAt = -1;
  for (; at < last; at++) {
    const byte = bytes[at]!;
    const digit = byte - ZERO;
    if (digit >= 0 && digit <= 9) {
      figures++;
      if (digits === 0 && digit === 0) continue;
      if (digits < PIECE) high = (high * 10 + digit) | 0;
      else if (digits < 2 * PIECE) middle = (middle * 10 + digit) | 0;
      else low = (low * 10 + digit) | 0;
      digits++;
    } else if (byte === POINT && pointAt < 0) pointAt = figures;
    else break;
  }
  let exponent = pointAt < 0 ? 0 : pointAt - figures;
  if (at < last) exponent += exponentIn(bytes, at, last);
  // Digits beyond MOST_DIGITS spoil low, and are not asked for.
  const rest = middle * POWER[POWERS + Math.max(digits - 2 * PIECE, 0)]! + low;
  const value = figures === 0 ? Number.NaN : scaled(high, rest, digits, exponent);
  if (Number.isNaN(value)) return slowNumber(bytes, first, last);
  return negative ? -value : value;
}

/** What follows the digits, as a power of ten; NaN when it is no short exponent. */
function exponentIn(bytes: Uint8Array, from: number, stop: number): number {
  if ((bytes[from]! | 32) !== 101 || stop - from > 5) return Number.NaN;
  let at = from + 1;
  const negative = bytes[at] === 45;
  if (negative || bytes[at] === 43) at++;
  if (at >= stop) return Number.NaN;
  let power = 0;
  for (; at < stop; at++) {
    const digit = bytes[at]! - ZERO;
    if (!(digit >= 0 && digit <= 9)) return Number.NaN;
    power = power * 10 + digit;
  }
  return negative ? -power : power;
}

/**
 * A whole number of `digits` digits, the first nine in high and the others in low, times a power of
 * ten, rounded once; NaN where this way cannot tell. Whole numbers below 2^53 and powers of ten up to
 * 10^22 are exact, so that one product or quotient is rounded once (W. D. Clinger, How to read
 * floating point numbers accurately, PLDI 1990).
 */
function scaled(high: number, low: number, digits: number, exponent: number): number {
  if (digits > MOST_DIGITS) return Number.NaN;
  const shift = POWER[POWERS + Math.max(digits - PIECE, 0)]!;
  if (digits <= EXACT_DIGITS && exponent >= -EXACT_POWER && exponent <= EXACT_POWER) {
    const whole = high * shift + low;
    return exponent < 0 ? whole / POWER[POWERS - exponent]! : whole * POWER[POWERS + exponent]!;
  }
  const known = exponent >= -POWERS && exponent <= POWERS;
  return known ? scaledTwice(high, low, shift, exponent) : Number.NaN;
}

/**
 * The same in pairs of doubles with error-free sums and products (T. J. Dekker, A floating-point
 * technique for extending the available precision, Numer. Math. 18 (1971) 224-242). With u = 2^-53
 * what is left out is below 24 u^2 of the value: 2 from the pair of the whole number, 3 from the
 * power's, 2 from the product of the small parts, 17 from rounding the small parts and their sum.
 * The answer is given only when 64 u^2 either way rounds to the same double (the test of A. Ziv,
 * ACM TOMS 17 (1991) 410-423): all but ties and what is next to them.
 */
function scaledTwice(high: number, low: number, shift: number, exponent: number): number {
  const shifted = high * shift;
  // low is below shift, so that the sum of the two is free of error.
  const whole = shifted + low;
  const wholeRest = low - (whole - shifted) + productError(high, shift, shifted);
  const power = POWER[POWERS + exponent]!;
  const value = whole * power;
  const rest =
    productError(whole, power, value) +
    (whole * POWER_REST[POWERS + exponent]! + wholeRest * power);
  const doubt = value * 2 ** -100;
  const rounded = value + (rest + doubt);
  return rounded === value + (rest - doubt) ? rounded : Number.NaN;
}

/** a b - product exactly, product being a b rounded: the halves are G. W. Veltkamp's (in Dekker 1971). */
function productError(a: number, b: number, product: number): number {
  const aUp = a * 134217729;
  const aHigh = aUp - (aUp - a);
  const aLow = a - aHigh;
  const bUp = b * 134217729;
  const bHigh = bUp - (bUp - b);
  const bLow = b - bHigh;
  return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
}

/** Ten to the power (index - POWERS): nearest double, and what that leaves. */
const POWER = new Float64Array(2 * POWERS + 1);
const POWER_REST = new Float64Array(2 * POWERS + 1);
for (let n = 0; n <= POWERS; n++) {
  const ten = 10n ** BigInt(n);
  const up = Number(ten);
  POWER[POWERS + n] = up;
  POWER_REST[POWERS + n] = Number(ten - BigInt(up));
  if (n === 0) continue;
  // 2^270 makes a whole number of the double: the last bit of 10^-64 is above 2^-266.
  const down = Number(`1e-${n}`);
  POWER[POWERS - n] = down;
  const left = (1n << 270n) - ten * BigInt(down * 2 ** 270);
  POWER_REST[POWERS - n] = Number(left) / up / 2 ** 270;
}

function slowNumber(bytes: Uint8Array, from: number, stop: number): number {
  if (stop - from > LONGEST) return Number.NaN;
  const cell = TEXT.decode(bytes.subarray(from, stop)).trim();
  // The language reads an empty cell as 0 and 0x10 as 16: no gauge writes those.
  return /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/.test(cell) ? Number(cell) : Number.NaN;
}
