/** Pointing at a way of mending, by pointer or by the focus: the drawing shows its outcome meanwhile. */
import type { FocusEvent, PointerEvent } from 'react';
import type { WayRow } from '../../figures/wayTable.ts';
import { pointAtWay, useWays } from '../../store/ways.ts';

export function usePointedWay(name: WayRow['name']) {
  const pointed = useWays((state) => state.pointed === name);
  const pointing = {
    onPointerEnter: (event: PointerEvent) => {
      // A finger points by the tap that chooses, and not on its way when it scrolls.
      if (event.pointerType === 'mouse') pointAtWay(name);
    },
    onPointerLeave: (event: PointerEvent<HTMLElement>) => {
      const held = event.currentTarget.contains(document.activeElement);
      if (event.pointerType === 'mouse' && !held) pointAtWay(null);
    },
    onFocus: () => pointAtWay(name),
    onBlur: (event: FocusEvent<HTMLElement>) => {
      if (!event.currentTarget.contains(event.relatedTarget)) pointAtWay(null);
    },
  };
  return { pointed, pointing };
}
