/**
 * Resolves when the browser has nothing else to do, or after `longest` ms.
 *
 * Safari has no requestIdleCallback; there a turn of the clock lets the page paint first.
 */
export function whenIdle(longest: number): Promise<void> {
  return new Promise((resolve) => {
    if ('requestIdleCallback' in globalThis) {
      requestIdleCallback(() => resolve(), { timeout: longest });
    } else setTimeout(resolve, 200);
  });
}
