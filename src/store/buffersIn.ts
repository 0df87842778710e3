/** The memory of every typed array in a plain value, each once: what can be handed over instead of copied. */
export function buffersIn(value: unknown): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  gather(value, found);
  return [...found];
}

function gather(value: unknown, into: Set<ArrayBuffer>): void {
  if (typeof value !== 'object' || value === null) return;
  if (!ArrayBuffer.isView(value)) for (const part of Object.values(value)) gather(part, into);
  else if (value.buffer instanceof ArrayBuffer) into.add(value.buffer);
}
