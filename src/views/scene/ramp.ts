/** The wall's colours in a row, as the paint reads them. */
import { rgb } from 'd3';
import { DataTexture, LinearFilter } from 'three';
import { RAMP_TEXELS } from './shaders.ts';

export function rampTexture(): DataTexture {
  const texture = new DataTexture(new Uint8Array(4 * RAMP_TEXELS), RAMP_TEXELS, 1);
  texture.minFilter = LinearFilter;
  texture.magFilter = LinearFilter;
  return texture;
}

/** Written in place, as the screen has them. */
export function fillRamp(texture: DataTexture, colours: readonly string[]): void {
  const texels = texture.image.data as Uint8Array;
  colours.forEach((colour, i) => {
    const { r, g, b } = rgb(colour);
    texels.set([r, g, b, 255], 4 * i);
  });
  texture.needsUpdate = true;
}
