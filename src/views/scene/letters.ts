/** The scene's letters: a sheet of clock marks in the page's own type, drawn once for a theme. */
import { CanvasTexture, LinearFilter } from 'three';
import { type Palette, paletteOf, type Theme } from '../../figures/colour.ts';

/** Everything that can be written; `arrow` is a shape. */
const SIGNS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11', '12', 'load', 'arrow'];
const COLUMNS = 4;
const ROWS = 4;
/** Pixels of the sheet for each sign; it is shown at a third of that or less. */
const CELL = { width: 128, height: 64 } as const;

export interface Letters {
  readonly texture: CanvasTexture;
  draw(theme: Theme): void;
}

/** Corner of a sign's cell on the sheet and its size, in shares, from the lower left. */
export function cellOf(sign: string): { u: number; v: number; width: number; height: number } {
  const i = SIGNS.indexOf(sign);
  return {
    u: (i % COLUMNS) / COLUMNS,
    v: 1 - (Math.floor(i / COLUMNS) + 1) / ROWS,
    width: 1 / COLUMNS,
    height: 1 / ROWS,
  };
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
  return {
    texture,
    draw(theme) {
      const context = canvas.getContext('2d');
      if (context === null) return;
      context.clearRect(0, 0, canvas.width, canvas.height);
      SIGNS.forEach((sign, i) => {
        const x = ((i % COLUMNS) + 0.5) * CELL.width;
        const y = (Math.floor(i / COLUMNS) + 0.5) * CELL.height;
        if (sign === 'arrow') drawArrow(context, x, y, paletteOf(theme));
        else drawSign(context, sign, x, y, paletteOf(theme));
      });
      texture.needsUpdate = true;
    },
  };
}

function drawSign(
  context: CanvasRenderingContext2D,
  sign: string,
  x: number,
  y: number,
  { ink, ground }: Palette,
): void {
  context.font = "600 44px 'Barlow Condensed', 'Arial Narrow', Arial, sans-serif";
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.lineJoin = 'round';
  context.lineWidth = 12;
  context.strokeStyle = ground;
  context.strokeText(sign, x, y + 2);
  context.fillStyle = ink;
  context.fillText(sign, x, y + 2);
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
