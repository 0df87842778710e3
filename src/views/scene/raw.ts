import { rgb } from 'd3';
import { Vector3 } from 'three';

/** A CSS colour as the screen has it, 0 to 1, untouched by three's colour management. */
export function raw(colour: string): Vector3 {
  const { r, g, b } = rgb(colour);
  return new Vector3(r / 255, g / 255, b / 255);
}
