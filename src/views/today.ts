/** The day where the repairer is, `2026-11-28`: in the evening it may be tomorrow elsewhere. */
export function today(now = new Date()): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
