/** The whole right side: the bore in three dimensions, the flat sheets, and one line for the place pointed at. */
import { memo, useId, useMemo, useRef, useState } from 'react';
import { Legend } from '../../drawings/Legend.tsx';
import { MarkKey } from '../../drawings/MarkKey.tsx';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import type { Theme } from '../../figures/colour.ts';
import { factorFor } from '../../figures/exaggeration.ts';
import { legendFigure } from '../../figures/legend.ts';
import { type MapFigure, mapFigure, withoutLines } from '../../figures/map.ts';
import { mapKey } from '../../figures/markKey.ts';
import { type PieceFigure, pieceFigure } from '../../figures/piece.ts';
import { sayPlace } from '../../figures/place.ts';
import { pressedHere, pressedWords } from '../../figures/pressedWords.ts';
import type { Units } from '../../figures/steps.ts';
import { type Wall, wallOf } from '../../figures/wall.ts';
import { useSession } from '../../store/session.ts';
import { useCursor } from '../../store/useCursor.ts';
import { Pages } from '../map/Pages.tsx';
import { type Page, SMALL_PAGES } from '../map/pages.ts';
import { SheetRoom } from '../map/SheetRoom.tsx';
import { useFirstCursor } from '../map/useFirstCursor.ts';
import { Disclosure } from '../parts/Disclosure.tsx';
import { useSize } from '../useSize.ts';
import { AskFit } from './AskFit.tsx';
import { Controls } from './Controls.tsx';
import { canDraw, NO_SCENE } from './canDraw.ts';
import { PressKey } from './PressKey.tsx';
import { PressSwitch } from './PressSwitch.tsx';
import { type Room, roomFor } from './room.ts';
import { Stage } from './Stage.tsx';
import type { OtherSwitch } from './useOtherReading.ts';
import { type Pressed, usePressed } from './usePressed.ts';
import { useShown } from './useShown.ts';
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

export const Drawing = memo(function Drawing({ bore, survey, units, theme, other }: Props) {
  const cut = useSession((session) => session.cut);
  const { facts } = bore;
  const map = useMemo(() => mapFigure(survey, facts, units, cut), [survey, facts, units, cut]);
  const piece = useMemo(() => pieceFigure(survey, facts, units, cut), [survey, facts, units, cut]);
  const wall = wallOf(survey);
  const root = useRef<HTMLDivElement>(null);
  const size = useSize(root);
  const room = roomFor(size);
  const drawn = map !== null && piece !== null && wall !== null;
  return (
    <div className="drawing" data-room={room?.kind} data-scene={canDraw()} ref={root}>
      {!drawn && <p className="drawing-wait">The drawing comes with the first readings.</p>}
      {drawn && room !== null && (
        <Parts {...{ bore, survey, units, theme, other, map, wall, piece, room }} />
      )}
    </div>
  );
});

interface PartsProps extends Props {
  readonly map: MapFigure;
  readonly wall: Wall;
  readonly piece: PieceFigure;
  readonly room: Room;
}

function Parts({ bore, survey, units, map: whole, wall, piece, theme, room, other }: PartsProps) {
  const id = useId();
  const [page, setPage] = useState<Page>('map');
  const [sheetAlone, setSheetAlone] = useState(false);
  const wanted = useSession((session) => session.exaggeration);
  const drawable = useMemo(canDraw, []);
  useFirstCursor(bore.id, survey);
  const { pressed: answer, asksFit } = useShown({ bore, survey, piece });
  const pressed = usePressed(answer, units);
  const map = useMemo(() => (pressed === null ? whole : withoutLines(whole)), [pressed, whole]);
  const laid = useMemo(
    () =>
      pressed && {
        wall: pressed.wall,
        words: pressedWords(pressed.answer, pressed.wall).join(' '),
      },
    [pressed],
  );
  const legend = useMemo(
    () => legendFigure(map.steps, theme, map.about),
    [map.steps, map.about, theme],
  );
  const small = room.kind === 'small' || room.kind === 'low';
  const flatOnly = !drawable || (small && sheetAlone);
  const exaggeration = factorFor(wanted, piece.exaggeration);
  const foot = (
    <div className="drawing-foot">
      <Readout {...{ bore, survey, units, pressed }} />
      <Disclosure label="Key to the marks" button="key" buttonClass="link-button">
        {() => <MarkKey marks={mapKey(map)} theme={theme} id={`${id}-marks`} />}
      </Disclosure>
    </div>
  );
  const pages = { page, onChoose: setPage };
  const sheet = (
    <SheetRoom
      {...{ survey, map, wall, theme, exaggeration, small, pressed: laid }}
      facts={bore.facts}
      pages={pages}
      foot={room.kind === 'tall' ? foot : null}
    />
  );
  return (
    <>
      {asksFit && <AskFit bore={bore.id} survey={survey.id} />}
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
        {pressed !== null && <PressKey pressed={pressed.wall} {...{ theme, id, small }} />}
        {!drawable && <p className="drawing-sceneless">{NO_SCENE}</p>}
        {!drawable && <PressSwitch {...{ bore, survey, piece, units }} />}
      </div>
      {flatOnly ? small && sheet : <Stage {...{ bore, survey, piece, units, theme }} />}
      {drawable && (
        <Controls
          of={{ bore, survey, piece, units }}
          exaggeration={piece.exaggeration}
          small={small}
          flat={
            small
              ? {
                  shown: sheetAlone,
                  show: setSheetAlone,
                  pages: <Pages names={SMALL_PAGES} {...pages} />,
                }
              : null
          }
        />
      )}
      {!drawable && small && (
        <div className="drawing-controls">
          <Pages names={SMALL_PAGES} {...pages} />
        </div>
      )}
      {!small && sheet}
      {room.kind !== 'tall' && foot}
    </>
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
function Readout({
  bore,
  survey,
  units,
  pressed,
}: Omit<Props, 'theme' | 'other'> & { readonly pressed: Pressed | null }) {
  const cursor = useCursor();
  const said =
    cursor === null
      ? 'Point at the wall or the map to read a place.'
      : sayPlace(
          { survey, facts: bore.facts },
          cursor,
          units,
          pressed && pressedHere(pressed.answer, cursor, units),
        );
  return (
    <p className="drawing-readout" aria-live="polite">
      {said}
    </p>
  );
}
