/** The whole right side: the bore in three dimensions, the flat map, and one line for the place pointed at. */
import { useId, useMemo, useRef, useState } from 'react';
import { Legend } from '../../drawings/Legend.tsx';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import type { Theme } from '../../figures/colour.ts';
import { factorFor } from '../../figures/exaggeration.ts';
import { legendFigure } from '../../figures/legend.ts';
import { describeMap, type MapFigure, mapFigure } from '../../figures/map.ts';
import { mapFrame } from '../../figures/mapFrame.ts';
import { type PieceFigure, pieceFigure } from '../../figures/piece.ts';
import { sayPlace } from '../../figures/place.ts';
import type { Units } from '../../figures/steps.ts';
import { useSession } from '../../store/session.ts';
import { MapView } from '../map/MapView.tsx';
import { useSize } from '../useSize.ts';
import { Controls } from './Controls.tsx';
import { type Room, roomFor } from './room.ts';
import { Stage } from './Stage.tsx';
import { factorWords, viewWords } from './words.ts';
import './drawing.css';

interface Props {
  readonly bore: BoreEvaluation;
  readonly survey: SurveyEvaluation;
  readonly units: Units;
  readonly theme: Theme;
}

export function Drawing({ bore, survey, units, theme }: Props) {
  const cut = useSession((session) => session.cut);
  const { facts } = bore;
  const map = useMemo(() => mapFigure(survey, facts, units, cut), [survey, facts, units, cut]);
  const piece = useMemo(() => pieceFigure(survey, facts, units, cut), [survey, facts, units, cut]);
  const root = useRef<HTMLDivElement>(null);
  const size = useSize(root);
  const room = roomFor(size);
  const drawn = map !== null && piece !== null;
  return (
    <div className="drawing" data-room={room?.kind} ref={root}>
      {!drawn && <p className="drawing-wait">The drawing comes with the first readings.</p>}
      {drawn && room !== null && (
        <Parts map={map} piece={piece} theme={theme} room={room}>
          <Readout bore={bore} survey={survey} units={units} />
        </Parts>
      )}
    </div>
  );
}

interface PartsProps {
  readonly map: MapFigure;
  readonly piece: PieceFigure;
  readonly theme: Theme;
  readonly room: Room;
  readonly children: React.ReactNode;
}

function Parts({ map, piece, theme, room, children }: PartsProps) {
  const id = useId();
  const [mapAlone, setMapAlone] = useState(false);
  const frame = useMemo(
    () => mapFrame(map, room.mapWidth, room.mapHeight),
    [map, room.mapWidth, room.mapHeight],
  );
  const legend = useMemo(
    () => legendFigure(map.steps, theme, map.about),
    [map.steps, map.about, theme],
  );
  const words = describeMap(map);
  const small = room.kind === 'small';
  const mapOnly = small && mapAlone;
  const flat = (
    <div className="drawing-map">
      <MapView map={map} frame={frame} theme={theme} id={`${id}-map`} />
    </div>
  );
  return (
    <>
      <div className="drawing-head">
        <Label piece={piece} map={map} mapOnly={mapOnly} stretch={frame.stretch} />
        <Legend
          legend={legend}
          theme={theme}
          width={room.legendWidth}
          low={small}
          id={`${id}-key`}
        />
      </div>
      {mapOnly ? flat : <Stage figure={piece} theme={theme} words={words} />}
      <Controls
        exaggeration={piece.exaggeration}
        small={small}
        map={small ? { shown: mapAlone, show: setMapAlone } : null}
      />
      {!small && flat}
      {children}
    </>
  );
}

interface LabelProps {
  readonly piece: PieceFigure;
  readonly map: MapFigure;
  readonly mapOnly: boolean;
  readonly stretch: number;
}

/** Which way one looks, how much wear is exaggerated, and what of it is assumed. */
function Label({ piece, map, mapOnly, stretch }: LabelProps) {
  const view = useSession((session) => session.view);
  const roll = useSession((session) => session.roll);
  const turn = useSession((session) => session.turn);
  const wanted = useSession((session) => session.exaggeration);
  const factor = factorFor(wanted, piece.exaggeration);
  const depth = `depth drawn ×${stretch.toFixed(1)}`;
  const drawn = mapOnly
    ? `Flat map, ${stretch > 1.05 ? depth : 'true proportions'}`
    : `${viewWords({ view, roll, turn })} · ${factorWords(factor)}`;
  return (
    <p className="drawing-label">
      <span>{drawn}</span>
      {map.assumed !== null && <span className="drawing-assumed">assumed: {map.assumed}</span>}
    </p>
  );
}

function Readout({ bore, survey, units }: Omit<Props, 'theme'>) {
  const cursor = useSession((session) => session.cursor);
  const said =
    cursor === null
      ? 'Point at the wall or the map to read a place.'
      : sayPlace({ survey, facts: bore.facts }, cursor, units);
  return (
    <p className="drawing-readout" aria-live="polite">
      {said}
    </p>
  );
}
