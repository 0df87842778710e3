/** Whether this browser draws in three dimensions. */
export const NO_SCENE =
  'This browser draws nothing in three dimensions (it has no WebGL). The flat sheets show all the same wear.';

let known: boolean | null = null;

export function canDraw(): boolean {
  known ??= document.createElement('canvas').getContext('webgl2') !== null;
  return known;
}
