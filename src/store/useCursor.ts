/** The place pointed at, for drawings: drawn in between key presses and moves of the pointer, never in their way. */
import { startTransition, useEffect, useState } from 'react';
import { type Place, useSession } from './session.ts';

export function useCursor(): Place | null {
  const [cursor, setCursor] = useState(() => useSession.getState().cursor);
  useEffect(() => {
    setCursor(useSession.getState().cursor);
    return useSession.subscribe((now, before) => {
      if (now.cursor !== before.cursor) startTransition(() => setCursor(now.cursor));
    });
  }, []);
  return cursor;
}
