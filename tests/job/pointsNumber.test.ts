/** Numbers read from bytes against the language's own reading of the text. */
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../src/job/pointsNumber.ts';
import { seededRandom } from '../../src/num/random.ts';

const read = (text: string) => numberIn(Buffer.from(text), 0, Buffer.byteLength(text));

/** How many of the texts are read otherwise than by `Number`, bit for bit; the first few of them. */
function misread(texts: Iterable<string>): { count: number; wrong: string[] } {
  const wrong: string[] = [];
  let count = 0;
  for (const text of texts) {
    count++;
    if (!Object.is(read(text), Number(text))) wrong.push(text);
  }
  return { count, wrong: wrong.slice(0, 5) };
}

function expectAllRight(count: number, make: (random: ReturnType<typeof seededRandom>) => string) {
  const random = seededRandom(count);
  const texts = Array.from({ length: count }, () => make(random));
  expect(misread(texts)).toEqual({ count, wrong: [] });
}

/** whole / 2^halvings in full, in plain decimals. */
function dyadic(whole: bigint, halvings: number): string {
  const scaled = (whole * 5n ** BigInt(halvings)).toString().padStart(halvings + 1, '0');
  const point = scaled.length - halvings;
  return halvings === 0 ? scaled : `${scaled.slice(0, point)}.${scaled.slice(point)}`;
}

/** The text with its last digit one up or down: next to a tie, on either side. */
function nudged(text: string, step: 1n | -1n): string {
  const point = text.indexOf('.');
  const digits = (BigInt(text.replace('.', '')) + step).toString();
  const padded = digits.padStart(text.length - (point < 0 ? 0 : 1), '0');
  const cut = padded.length - (text.length - 1 - point);
  return point < 0 ? padded : `${padded.slice(0, cut)}.${padded.slice(cut)}`;
}

describe('the same double as the language reads', () => {
  it('what programs write: 15 to 21 digits, shortest, plain and with exponents', () => {
    expectAllRight(200_000, (random) => {
      const value = (random.uniform() - 0.5) * 10 ** Math.floor(9 * random.uniform() - 4);
      const digits = 15 + (random.bits() % 7);
      const how = random.bits() % 4;
      if (how === 0) return String(value);
      if (how === 1) return value.toPrecision(digits);
      return how === 2 ? value.toExponential(digits - 1) : value.toFixed(random.bits() % 20);
    });
  });

  it('any double there is, by its bits', () => {
    const view = new DataView(new ArrayBuffer(8));
    expectAllRight(100_000, (random) => {
      view.setUint32(0, random.bits());
      view.setUint32(4, random.bits());
      const value = view.getFloat64(0);
      return Number.isFinite(value) ? value.toPrecision(17) : '0';
    });
  });

  it('1 to 40 random digits, the point anywhere, powers of ten from -90 to 90', () => {
    expectAllRight(100_000, (random) => {
      const digits = Array.from({ length: 1 + (random.bits() % 40) }, () => random.bits() % 10);
      const point = random.bits() % (digits.length + 1);
      const text = `${digits.slice(0, point).join('')}.${digits.slice(point).join('')}`;
      return `${['', '-', '+'][random.bits() % 3]}${text}e${(random.bits() % 181) - 90}`;
    });
  });

  // 54 bits, the last of them set: halfway between two doubles, to be rounded to the even one.
  it('ties, and one unit of the last digit to either side', () => {
    const random = seededRandom(54);
    const texts: string[] = [];
    for (let i = 0; i < 40_000; i++) {
      const odd = (2n ** 53n + BigInt(Math.floor(random.uniform() * 2 ** 52))) | 1n;
      const tie = dyadic(odd * 2n ** BigInt(random.bits() % 12), random.bits() % 14);
      texts.push(tie, nudged(tie, 1n), nudged(tie, -1n));
    }
    expect(misread(texts)).toEqual({ count: 120_000, wrong: [] });
  });

  it('the ties are ties: the neighbours to either side differ', () => {
    const tie = dyadic(2n ** 53n + 1n, 3);
    expect(tie).toBe('1125899906842624.125');
    expect(Number(nudged(tie, 1n))).toBeGreaterThan(Number(nudged(tie, -1n)));
  });

  it('single hard ones', () => {
    const hard = ['9007199254740993', '9007199254740992.5', '1e23', '8.5e22', '1e22', '1e-22'];
    hard.push('6929495644600919.5', '3.518437208883201171875e13', '0.1e-64', '1e64', '-0', '0e-99');
    hard.push('1.00000000000000011102230246251565404236316680908203125', '000000000000000000001.5');
    hard.push(
      '0.000000000000000000000000012345678901234567',
      '99999999999999999999999999',
      '.5e-0',
    );
    hard.push('4.9e-324', '2.2250738585072011e-308', '1.7976931348623159e308', '1e00005', '5.e+3');
    expect(misread(hard)).toEqual({ count: hard.length, wrong: [] });
  });
});

it('blanks around a number are nothing', () => {
  expect(read(' \t1.5 \r')).toBe(1.5);
  expect(read('\u00a01.2345678901234567\u00a0')).toBe(1.2345678901234567);
  expect(numberIn(Buffer.from('7,-2.5,8'), 2, 6)).toBe(-2.5);
});

it('what is no number is none, however long', () => {
  const none = ['', ' ', '-', '+', '.', '-.', 'e5', '1e', '1e+', '1e5.5', '1.2.3', '1 2', '--1'];
  none.push('0x10', '1_000', 'NaN', 'inf', 'Infinity', '1e5e5', '1,5', '1d', '\0', '１');
  for (const text of none) expect([text, read(text)]).toEqual([text, Number.NaN]);
  expect(read(`${'9'.repeat(3_000)}a`)).toBeNaN();
  expect(read('9'.repeat(10_000_000))).toBeNaN();
  expect(read('1e999')).toBe(Number.POSITIVE_INFINITY);
});
