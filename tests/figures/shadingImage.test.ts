import { rgb } from 'd3';
import { describe, expect, it } from 'vitest';
import { colourOf, colourRamp } from '../../src/figures/colour.ts';
import { RAMP_COLOURS, shadingImage } from '../../src/figures/shadingImage.ts';
import { chooseSteps } from '../../src/figures/steps.ts';

/**
 * Reads a bitmap as its format is published (BITMAPFILEHEADER and BITMAPINFOHEADER of the Windows documentation: size at
 * 2, start of the pixels at 10, width at 18, height at 22, bits a pixel at 28, compression at 30, colours at 46; rows
 * from the lowest up, padded to 4 bytes; a palette of blue, green, red, 0).
 */
function read(href: string) {
  const bytes = Buffer.from(href.replace('data:image/bmp;base64,', ''), 'base64');
  expect(bytes.toString('latin1', 0, 2)).toBe('BM');
  expect(bytes.readUInt32LE(2)).toBe(bytes.length);
  expect([bytes.readUInt32LE(14), bytes.readUInt16LE(28), bytes.readUInt32LE(30)]).toEqual([
    40, 8, 0,
  ]);
  const first = bytes.readUInt32LE(10);
  expect(first).toBe(54 + 4 * bytes.readUInt32LE(46));
  const [width, height] = [bytes.readInt32LE(18), bytes.readInt32LE(22)];
  const stride = Math.ceil(width / 4) * 4;
  expect(bytes.length).toBe(first + stride * height);
  const at = (x: number, y: number) => {
    const entry = 54 + 4 * bytes[first + (height - 1 - y) * stride + x]!;
    return rgb(bytes[entry + 2]!, bytes[entry + 1]!, bytes[entry]!).formatHex();
  };
  return { width, height, at };
}

const steps = chooseSteps(-0.1, 0.1, 'mm');
const ramp = colourRamp(steps, 'light', RAMP_COLOURS);
const colour = colourOf(steps, 'light');
/** A deviation that is just one of the ramp's, so that its colour is exact. */
const onRamp = (i: number) => ramp.from + ((ramp.to - ramp.from) * i) / (RAMP_COLOURS - 1);

describe('the colours as a picture', () => {
  const columns = 5;
  const rows = 2;
  const values = Float64Array.from({ length: columns * (rows + 1) }, (_, i) => onRamp(2 * 7 * i));
  values[columns * rows + 3] = Number.NaN;
  const image = shadingImage({ columns, rows, cut: 0, values }, ramp, '#123456');
  const { width, height, at } = read(image.href);

  it('has a pixel on every sample, one between, and closes round the clock', () => {
    expect([width, height]).toEqual([2 * columns + 1, 2 * rows + 1]);
    expect([image.wide, image.high]).toEqual([11 / 10, 5 / 4]);
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        expect(at(2 * column, 2 * row)).toBe(colour(values[row * columns + column]!));
      }
      expect(at(2 * columns, 2 * row)).toBe(at(0, 2 * row));
    }
    expect(at(1, 0)).toBe(colour(onRamp(7)));
    expect(at(0, 1)).toBe(colour(onRamp(7 * columns)));
  });

  it('is of the colour for what is not known there and beside it, and nowhere else', () => {
    for (let x = 0; x < width; x++) {
      for (let y = 0; y < height; y++) {
        const beside = y >= 3 && x >= 5 && x <= 7;
        expect(at(x, y) === '#123456', `${x} ${y}`).toBe(beside);
      }
    }
  });

  it('stays at the ends of the ramp beyond them', () => {
    const far = Float64Array.from({ length: 4 }, (_, i) => (i % 2 === 0 ? -9 : 9));
    const ends = read(
      shadingImage({ columns: 2, rows: 1, cut: 0, values: far }, ramp, '#000').href,
    );
    expect(ends.at(0, 0)).toBe(ramp.colours[0]);
    expect(ends.at(2, 0)).toBe(ramp.colours[RAMP_COLOURS - 1]);
  });
});
