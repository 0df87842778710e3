/** The scene's letters: a sheet of everything that is written on the piece, in the page's own type. */
import { CanvasTexture, LinearFilter } from 'three';
import { type Palette, paletteOf, type Theme } from '../../figures/colour.ts';

const COLUMNS = 8;
const ROWS = 8;
/** Pixels of the sheet for each sign; it is shown at a third of that or less. */
const CELL = { width: 128, height: 64 } as const;
/** Share of the cell's width that letters may take. */
const WIDEST = 0.94;

export interface Letters {
  readonly texture: CanvasTexture;
  /** Sees that all of these can be written; draws the sheet anew only where one is missing. */
  need(signs: readonly string[]): void;
  /** Corner of a sign's cell on the sheet and its size, in shares, from the lower left. */
  cellOf(sign: string): { u: number; v: number; width: number; height: number };
  draw(theme: Theme): void;
}

/** Width of a cell over its height. */
export const CELL_SHAPE = CELL.width / CELL.height;

export function makeLetters(): Letters {
  const canvas = document.createElement('canvas');
  canvas.width = COLUMNS * CELL.width;
  canvas.height = ROWS * CELL.height;
  const texture = new CanvasTexture(canvas);
  texture.minFilter = LinearFilter;
  texture.generateMipmaps = false;
  let written: string[] = [];
  let theme: Theme = 'light';
  const draw = () => {
    const context = canvas.getContext('2d');
    if (context === null) return;
    context.clearRect(0, 0, canvas.width, canvas.height);
    written.forEach((sign, i) => {
      const x = ((i % COLUMNS) + 0.5) * CELL.width;
      const y = (Math.floor(i / COLUMNS) + 0.5) * CELL.height;
      drawSign(context, sign, x, y, paletteOf(theme));
    });
    texture.needsUpdate = true;
  };
  return {
    texture,
    need(signs) {
      const wanted = [...new Set(signs)].slice(0, COLUMNS * ROWS);
      if (wanted.every((sign) => written.includes(sign))) return;
      written = wanted;
      draw();
    },
    cellOf(sign) {
      const i = written.indexOf(sign);
      return {
        u: (i % COLUMNS) / COLUMNS,
        v: 1 - (Math.floor(i / COLUMNS) + 1) / ROWS,
        width: 1 / COLUMNS,
        height: 1 / ROWS,
      };
    },
    draw(next) {
      theme = next;
      draw();
    },
  };
}

type Drawn = (context: CanvasRenderingContext2D, x: number, y: number, palette: Palette) => void;

/** Signs that are shapes; the grip of the cut is the page's own and leaves its place free. */
const SHAPES: Readonly<Record<string, Drawn>> = { arrow: drawArrow, knob: () => undefined };

function drawSign(
  context: CanvasRenderingContext2D,
  sign: string,
  x: number,
  y: number,
  palette: Palette,
): void {
  const shape = SHAPES[sign];
  if (shape !== undefined) {
    shape(context, x, y, palette);
    return;
  }
  context.font = "600 44px 'Barlow Condensed', 'Arial Narrow', Arial, sans-serif";
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.lineJoin = 'round';
  context.lineWidth = 12;
  const wide = WIDEST * CELL.width - context.lineWidth;
  context.strokeStyle = palette.ground;
  context.strokeText(sign, x, y + 2, wide);
  context.fillStyle = palette.ink;
  context.fillText(sign, x, y + 2, wide);
}

function drawArrow(
  context: CanvasRenderingContext2D,
  x: number,
  y: number,
  { ink, ground }: Palette,
): void {
  context.beginPath();
  context.moveTo(x, y - 26);
  context.lineTo(x + 20, y + 2);
  context.lineTo(x + 7, y + 2);
  context.lineTo(x + 7, y + 26);
  context.lineTo(x - 7, y + 26);
  context.lineTo(x - 7, y + 2);
  context.lineTo(x - 20, y + 2);
  context.closePath();
  context.lineWidth = 8;
  context.lineJoin = 'round';
  context.strokeStyle = ground;
  context.stroke();
  context.fillStyle = ink;
  context.fill();
}
