/** Pointing at a way of mending, by pointer or by the focus: the drawing shows its outcome meanwhile. */
import type { FocusEvent, PointerEvent } from 'react';
import type { WayRow } from '../../figures/wayTable.ts';
import { pointAtWay, useWays } from '../../store/ways.ts';

/** What pointed last: that is what counts. */
let last: 'mouse' | 'focus' = 'focus';

export function usePointedWay(name: WayRow['name']) {
  const pointed = useWays((state) => state.pointed === name);
  const point = (by: typeof last) => {
    last = by;
    pointAtWay(name);
  };
  const pointing = {
    onPointerMove: ({ pointerType, movementX, movementY }: PointerEvent) => {
      // A finger points by the tap that chooses, and not on its way when it scrolls; a mouse at rest is told of as well
      // when the page moves under it, and points at nothing.
      if (pointerType === 'mouse' && (movementX !== 0 || movementY !== 0)) point('mouse');
    },
    onPointerLeave: ({ pointerType, currentTarget }: PointerEvent<HTMLElement>) => {
      const held = currentTarget.contains(document.activeElement);
      if (pointerType === 'mouse' && last === 'mouse' && !held) pointAtWay(null);
    },
    onFocus: () => point('focus'),
    onBlur: (event: FocusEvent<HTMLElement>) => {
      if (!event.currentTarget.contains(event.relatedTarget)) pointAtWay(null);
    },
  };
  return { pointed, pointing };
}
