/**
 * Room to work in, kept from call to call: what is made for each of many passes costs more to make and to let go of than what
 * is done in it.
 *
 * @param make room of a length
 * @returns gives room of that length or longer, always the same one, with whatever the last call left in it: to be written
 *   before it is read, and never to be handed out
 */
export function roomOf<Room extends { readonly length: number }>(
  make: (length: number) => Room,
): (length: number) => Room {
  let kept = make(0);
  return (length) => {
    if (kept.length < length) kept = make(length);
    return kept;
  };
}
