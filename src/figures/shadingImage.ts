/**
 * The wall's colours as a small picture, to be laid under the contours and drawn as large as wanted: a bitmap with a
 * palette (Windows bitmap, version 3), whose colours the screen runs into one another.
 */
import { rgb } from 'd3';
import type { Ramp } from './colour.ts';
import type { Sampled } from './sample.ts';

export interface ShadingImage {
  /** A `data:` address. */
  readonly href: string;
  /**
   * The middles of the outermost pixels lie on the edges of the wall: of its width and of its depth the picture takes so
   * many times as much.
   */
  readonly wide: number;
  readonly high: number;
}

/** Entries of a palette; the first is what is not known. */
const ENTRIES = 256;
export const RAMP_COLOURS = ENTRIES - 1;
/** Pixels from one sample to the next: between them the deviation runs straight. */
const FINE = 2;
const HEADER = 54;

/** @param ramp of `RAMP_COLOURS` colours */
export function shadingImage(field: Sampled, ramp: Ramp, unknown: string): ShadingImage {
  const width = field.columns * FINE + 1;
  const height = field.rows * FINE + 1;
  const stride = 4 * Math.ceil(width / 4);
  const first = HEADER + 4 * ENTRIES;
  const bytes = new Uint8Array(first + stride * height);
  writeHeader(new DataView(bytes.buffer), width, height);
  bytes.set(paletteBytes(ramp, unknown), HEADER);
  const scale = (RAMP_COLOURS - 1) / (ramp.to - ramp.from);
  for (let y = 0; y < height; y++) {
    // Such a bitmap begins with its lowest row.
    const row = first + (height - 1 - y) * stride;
    for (let x = 0; x < width; x++) {
      const at = Math.round((between(field, x / FINE, y / FINE) - ramp.from) * scale);
      bytes[row + x] = Number.isNaN(at) ? 0 : 1 + Math.min(RAMP_COLOURS - 1, Math.max(0, at));
    }
  }
  return {
    href: `data:image/bmp;base64,${base64(bytes)}`,
    wide: width / (width - 1),
    high: height / (height - 1),
  };
}

const palettes = new WeakMap<Ramp, { readonly unknown: string; readonly bytes: Uint8Array }>();

/** Blue, green, red and nothing of each entry. */
function paletteBytes(ramp: Ramp, unknown: string): Uint8Array {
  const found = palettes.get(ramp);
  if (found?.unknown === unknown) return found.bytes;
  const bytes = new Uint8Array(4 * ENTRIES);
  [unknown, ...ramp.colours].forEach((colour, i) => {
    const { r, g, b } = rgb(colour);
    bytes.set([b, g, r], 4 * i);
  });
  palettes.set(ramp, { unknown, bytes });
  return bytes;
}

/** Between four samples; NaN beside one. */
function between({ columns, rows, values }: Sampled, u: number, v: number): number {
  const column = Math.floor(u);
  const row = Math.min(Math.floor(v), rows - 1);
  const [du, dv] = [u - column, v - row];
  const left = column % columns;
  const right = (column + 1) % columns;
  const at = (r: number) => {
    const a = values[r * columns + left]!;
    return du === 0 ? a : a + du * (values[r * columns + right]! - a);
  };
  return dv === 0 ? at(row) : at(row) + dv * (at(row + 1) - at(row));
}

function writeHeader(view: DataView, width: number, height: number): void {
  const size = view.byteLength;
  view.setUint16(0, 0x424d);
  view.setUint32(2, size, true);
  view.setUint32(10, HEADER + 4 * ENTRIES, true);
  view.setUint32(14, 40, true);
  view.setInt32(18, width, true);
  view.setInt32(22, height, true);
  view.setUint16(26, 1, true);
  view.setUint16(28, 8, true);
  view.setUint32(46, ENTRIES, true);
}

/** More arguments than this a function may not take everywhere. */
const CHUNK = 8192;

function base64(bytes: Uint8Array & { toBase64?(): string }): string {
  // Newer browsers do it themselves, many times as fast.
  if (bytes.toBase64 !== undefined) return bytes.toBase64();
  let text = '';
  for (let i = 0; i < bytes.length; i += CHUNK) {
    text += String.fromCharCode(...bytes.subarray(i, i + CHUNK));
  }
  return btoa(text);
}
