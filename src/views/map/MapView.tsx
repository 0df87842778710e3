/** The flat map with its profiles, to point at: it sets the same cursor as the scene. */
import { memo, useRef } from 'react';
import { FlatMap } from '../../drawings/FlatMap.tsx';
import { MapCursor } from '../../drawings/MapCursor.tsx';
import { PressureLines } from '../../drawings/PressureLines.tsx';
import type { Theme } from '../../figures/colour.ts';
import type { MapFigure } from '../../figures/map.ts';
import { pointAt } from '../../figures/mapFrame.ts';
import type { MapSheet } from '../../figures/mapSheet.ts';
import type { Wall } from '../../figures/wall.ts';
import { clockText } from '../../job/clock.ts';
import { formatDepth } from '../../job/units.ts';
import { useSession } from '../../store/session.ts';
import { useCursor } from '../../store/useCursor.ts';
import { CutGrip } from './CutGrip.tsx';
import { MapStrips } from './MapStrips.tsx';
import { PointArea } from './PointArea.tsx';
import { pointed, type Region, regionAt } from './pointing.ts';
import type { SheetProps } from './sheetProps.ts';
import './map.css';

interface Props {
  readonly map: MapFigure;
  readonly wall: Wall;
  readonly sheet: MapSheet;
  readonly theme: Theme;
  readonly pressed: SheetProps['pressed'];
  readonly id: string;
}

/** The drawing itself changes with the readings alone; cursor and strips lie on top of it. */
const Still = memo(FlatMap);
const Pressed = memo(PressureLines);

const KEYS =
  'Left and right arrow move round the clock, up and down along the depth, with Shift an hour or an eighth of the depth; Home is the rim, End the bottom, Escape puts the cursor away.';

export function MapView({ map, wall, sheet, theme, pressed, id }: Props) {
  const cursor = useCursor();
  const region = useRef<Region>('map');
  const onPoint = (x: number, y: number, begins: boolean) => {
    if (begins) region.current = regionAt(sheet, x, y);
    const { cursor: before, look } = useSession.getState();
    look({ cursor: pointed(sheet, region.current, map, before, x, y) });
  };
  const at = cursor === null ? null : pointAt(sheet.frame, map, cursor);
  return (
    <div className="map-sheet" style={{ width: sheet.width, height: sheet.height }}>
      <PointArea
        className="map-view"
        label={`Flat map. ${KEYS}`}
        wall={map}
        onPoint={onPoint}
        style={{ width: sheet.width, height: sheet.height }}
      >
        <Still map={map} frame={sheet.frame} theme={theme} id={id} />
        {pressed !== null && (
          <div className="map-over">
            <Pressed
              pressed={pressed.wall}
              label={pressed.words}
              {...{ theme, id }}
              frame={sheet.frame}
            />
          </div>
        )}
        <div className="map-over">
          <MapStrips {...{ wall, map, sheet, theme, cursor, id }} />
        </div>
        {at !== null && cursor !== null && (
          <div className="map-over map-cursor">
            <MapCursor
              map={map}
              sheet={sheet}
              theme={theme}
              x={at.x}
              y={at.y}
              clock={clockText(cursor.theta)}
              depth={formatDepth(cursor.z, map.units).split(' ')[0]!}
            />
          </div>
        )}
      </PointArea>
      <CutGrip frame={sheet.frame} cut={map.cut} />
    </div>
  );
}
