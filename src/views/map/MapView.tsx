/** The flat map to point at: by pointer, by finger, by arrow keys. It sets the same cursor as the scene. */
import { type KeyboardEvent, memo, type PointerEvent, useCallback } from 'react';
import { FlatMap } from '../../drawings/FlatMap.tsx';
import { MapCursor } from '../../drawings/MapCursor.tsx';
import type { Theme } from '../../figures/colour.ts';
import type { MapFigure } from '../../figures/map.ts';
import { type MapFrame, placeAt, pointAt } from '../../figures/mapFrame.ts';
import { useSession } from '../../store/session.ts';
import { moved } from './moved.ts';
import './map.css';

interface Props {
  readonly map: MapFigure;
  readonly frame: MapFrame;
  readonly theme: Theme;
  readonly id: string;
}

/** The drawing itself changes with the readings alone; the cursor lies on top of it. */
const Still = memo(FlatMap);

const KEYS =
  'Left and right arrow move round the clock, up and down along the depth, with Shift an hour or an eighth of the depth; Home is the rim, End the bottom, Escape puts the cursor away.';

export function MapView({ map, frame, theme, id }: Props) {
  const cursor = useSession((session) => session.cursor);
  const look = useSession((session) => session.look);
  const onPoint = useCallback(
    (event: PointerEvent<HTMLElement>) => {
      // A finger that only passes by may be scrolling; one that was put down here points.
      if (event.type === 'pointermove' && event.pointerType !== 'mouse' && event.buttons === 0)
        return;
      const box = event.currentTarget.getBoundingClientRect();
      look({ cursor: placeAt(frame, map, event.clientX - box.left, event.clientY - box.top) });
    },
    [frame, map, look],
  );
  const onKey = useCallback(
    (event: KeyboardEvent) => {
      const { cursor: from } = useSession.getState();
      const to = moved(from, event.key, event.shiftKey, map);
      if (to === undefined) return;
      event.preventDefault();
      look({ cursor: to });
    },
    [map, look],
  );
  const at = cursor === null ? null : pointAt(frame, map, cursor);
  return (
    <div
      className="map-view"
      style={{ width: frame.width, height: frame.height }}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved about in by keys
      tabIndex={0}
      aria-label={`Flat map. ${KEYS}`}
      onPointerMove={onPoint}
      onPointerDown={onPoint}
      onKeyDown={onKey}
    >
      <Still map={map} frame={frame} theme={theme} id={id} />
      {at !== null && (
        <div className="map-cursor">
          <MapCursor frame={frame} theme={theme} x={at.x} y={at.y} />
        </div>
      )}
    </div>
  );
}
