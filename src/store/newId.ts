/** An id for a job that no other job on any device has. */
export function newId(): string {
  // Not randomUUID: a page that comes over plain http in a shop's own network does not have it.
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return `job-${Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}
