/** True where the system asks for less motion. */
import { useSyncExternalStore } from 'react';

const query = () => matchMedia('(prefers-reduced-motion: reduce)');

export function useStill(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const asked = query();
      asked.addEventListener('change', changed);
      return () => asked.removeEventListener('change', changed);
    },
    () => query().matches,
  );
}
