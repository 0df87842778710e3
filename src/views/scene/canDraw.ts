/** Whether this browser draws in three dimensions. */
export const NO_SCENE =
  'No drawing in three dimensions here (the browser has no WebGL): the flat sheets show all the same wear.';

let known: boolean | null = null;

export function canDraw(): boolean {
  known ??= document.createElement('canvas').getContext('webgl2') !== null;
  return known;
}
