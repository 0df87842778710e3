/** The whole right side: the bore in three dimensions, the flat map, and one line for the place pointed at. */
import { useId, useMemo, useRef, useState } from 'react';
import { Legend } from '../../drawings/Legend.tsx';
import { MarkKey } from '../../drawings/MarkKey.tsx';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import type { Theme } from '../../figures/colour.ts';
import { factorFor } from '../../figures/exaggeration.ts';
import { legendFigure } from '../../figures/legend.ts';
import { type MapFigure, mapFigure } from '../../figures/map.ts';
import { mapFrame } from '../../figures/mapFrame.ts';
import { mapKey } from '../../figures/markKey.ts';
import { type PieceFigure, pieceFigure } from '../../figures/piece.ts';
import { sayPlace } from '../../figures/place.ts';
import type { Units } from '../../figures/steps.ts';
import { useSession } from '../../store/session.ts';
import { PAGES, type Page, Sheet } from '../map/Sheet.tsx';
import { Disclosure } from '../parts/Disclosure.tsx';
import { useSize } from '../useSize.ts';
import { Controls } from './Controls.tsx';
import { type Room, roomFor } from './room.ts';
import { Stage } from './Stage.tsx';
import type { OtherSwitch } from './useOtherReading.ts';
import { factorWords, viewWords } from './words.ts';
import './drawing.css';

interface Props {
  readonly bore: BoreEvaluation;
  readonly survey: SurveyEvaluation;
  readonly units: Units;
  readonly theme: Theme;
  /** The other reading of the same numbers, shown or not; null where there is none. */
  readonly other: OtherSwitch | null;
}

export function Drawing({ bore, survey, units, theme, other }: Props) {
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
        <Parts {...{ bore, survey, units, theme, other, map, piece, room }} />
      )}
    </div>
  );
}

interface PartsProps extends Props {
  readonly map: MapFigure;
  readonly piece: PieceFigure;
  readonly room: Room;
}

function Parts({ bore, survey, units, map, piece, theme, room, other }: PartsProps) {
  const id = useId();
  const [page, setPage] = useState<Page>('map');
  const [sheetAlone, setSheetAlone] = useState(false);
  const wanted = useSession((session) => session.exaggeration);
  const frame = useMemo(
    () => mapFrame(map, room.mapWidth, room.mapHeight),
    [map, room.mapWidth, room.mapHeight],
  );
  const legend = useMemo(
    () => legendFigure(map.steps, theme, map.about),
    [map.steps, map.about, theme],
  );
  const small = room.kind === 'small' || room.kind === 'low';
  const flatOnly = small && sheetAlone;
  const exaggeration = factorFor(wanted, piece.exaggeration);
  const tall = room.kind === 'tall';
  const said = <Readout bore={bore} survey={survey} units={units} />;
  const key = <MarkKey marks={mapKey(map)} theme={theme} id={`${id}-marks`} />;
  const pages = <Pages page={page} onChoose={setPage} />;
  const sheet = (
    <div className="drawing-map">
      {!small && (
        <div className="drawing-strip">
          {pages}
          {tall && said}
        </div>
      )}
      <Sheet
        {...{ page, survey, facts: bore.facts, map, frame, theme, exaggeration }}
        id={`${id}m`}
        width={room.mapWidth}
      />
      {tall && page === 'map' && key}
    </div>
  );
  return (
    <>
      <div className="drawing-head">
        <Label
          factor={small ? null : exaggeration}
          assumed={map.assumed}
          flat={flatOnly}
          other={other}
        />
        <Legend
          legend={legend}
          theme={theme}
          width={room.legendWidth}
          low={small}
          id={`${id}-key`}
        />
      </div>
      {flatOnly ? sheet : <Stage {...{ bore, survey, piece, units, theme }} />}
      <Controls
        of={{ bore, survey, piece, units }}
        exaggeration={piece.exaggeration}
        small={small}
        flat={small ? { shown: sheetAlone, show: setSheetAlone, pages } : null}
      />
      {!small && sheet}
      {!tall && (
        <div className="drawing-foot">
          {said}
          <Disclosure label="Key to the marks" button="key" buttonClass="link-button">
            {() => key}
          </Disclosure>
        </div>
      )}
    </>
  );
}

interface PagesProps {
  readonly page: Page;
  readonly onChoose: (page: Page) => void;
}

/** Which of the flat drawings is shown. */
function Pages({ page, onChoose }: PagesProps) {
  return (
    <fieldset className="drawing-pages" aria-label="Flat drawing">
      {PAGES.map((one) => (
        <button
          key={one.page}
          type="button"
          aria-pressed={one.page === page}
          onClick={() => onChoose(one.page)}
        >
          {one.name}
        </button>
      ))}
    </fieldset>
  );
}

interface LabelProps {
  /** Factor that wear is drawn with; null where the list of factors beside the drawing says it. */
  readonly factor: number | null;
  readonly assumed: string | null;
  /** A flat drawing alone is shown. */
  readonly flat: boolean;
  readonly other: Props['other'];
}

/** Which way one looks, how much wear is exaggerated, and what of it is assumed. */
function Label({ factor, assumed, flat, other }: LabelProps) {
  const view = useSession((session) => session.view);
  const roll = useSession((session) => session.roll);
  const turn = useSession((session) => session.turn);
  const seen = flat ? 'Flat drawing' : viewWords({ view, roll, turn });
  return (
    <p className="drawing-label">
      <span>{flat || factor === null ? seen : `${seen} · ${factorWords(factor)}`}</span>
      {(assumed !== null || other !== null) && (
        <span className="drawing-assumed">
          {other?.shown ? 'the other reading' : `assumed: ${assumed}`}{' '}
          {other !== null && (
            <button
              type="button"
              className="link-button"
              data-other
              aria-pressed={other.shown}
              onClick={other.toggle}
            >
              see the other
            </button>
          )}
        </span>
      )}
    </p>
  );
}

/** The place pointed at, in words. */
function Readout({ bore, survey, units }: Omit<Props, 'theme' | 'other'>) {
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
