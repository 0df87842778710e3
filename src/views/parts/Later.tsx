/** What is drawn in a second go, between key presses, so that what stands above it can be used sooner. */
import { type ReactNode, useDeferredValue } from 'react';

export function Later({ children }: { readonly children: ReactNode }) {
  return useDeferredValue(true, false) ? children : null;
}
