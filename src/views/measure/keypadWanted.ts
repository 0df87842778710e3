/** Whether the page's own keypad comes up with the table. */
const fingers = typeof matchMedia === 'function' ? matchMedia('(pointer: coarse)') : null;

/** @param chosen what the person said; null: where fingers do the pointing */
export function keypadWanted(chosen: boolean | null): boolean {
  return chosen ?? fingers?.matches === true;
}
