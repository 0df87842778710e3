/** Everything that is laid over the piece just now, from the session and from what was worked out. */
import { useMemo } from 'react';
import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import { circlesAt, type ShownCircles } from '../../figures/circles.ts';
import type { Fit } from '../../figures/fit.ts';
import { type Ghost, ghostOf } from '../../figures/ghost.ts';
import { type Layers, layersOf } from '../../figures/layers.ts';
import { touchesOf } from '../../figures/marks.ts';
import { wallWith } from '../../figures/mesh.ts';
import { laidStrokes, readingNear, type Touched } from '../../figures/overlaid.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { pressStrokes } from '../../figures/pressStrokes.ts';
import type { Units } from '../../figures/steps.ts';
import type { Stroke } from '../../figures/strokes.ts';
import { answerFor } from '../../store/aside.ts';
import { usePasses } from '../../store/passes.ts';
import { useSession } from '../../store/session.ts';
import { useCursor } from '../../store/useCursor.ts';
import { useTable } from '../../store/useTable.ts';
import type { Shown } from './overlays.ts';
import { type Pressed, usePressed } from './usePressed.ts';
import { type Shows, useShown } from './useShown.ts';

export interface Overlaid {
  readonly shown: Shown;
  /** The piece as the step of the story has it. */
  readonly piece: PieceFigure;
  readonly layers: Layers | null;
  readonly strokes: readonly Stroke[];
  readonly fit: Fit | null;
  readonly circles: ShownCircles | null;
  readonly ghost: Ghost | null;
  readonly pressed: Pressed | null;
  /** Which of the two is left out where bushing and pressure stand before one another; null: nothing is. */
  readonly leftOut: 'bushing' | 'pressure' | null;
}

/** Rolled out no farther than this, the bushing is still whole and hides the wall (`fitShaders.ts`). */
const BEHIND = 0.06;

interface Of extends Shows {
  readonly units: Units;
}

export function useOverlaid({ bore, survey, units, piece: whole }: Of): Overlaid {
  const section = useSession((session) => session.section);
  const told = useSession((session) => (session.section === 'show' ? session.story : null));
  const away = useSession((session) => (session.view === 'half' ? session.away : null));
  const deep = useSession(({ cursor }) => cursor?.z ?? 0);
  const { shown, fit, pressed: answer } = useShown({ bore, survey, piece: whole });
  const pressed = usePressed(answer, units);
  const inHole = useSession(({ view, roll }) => view !== 'half' && roll < BEHIND);
  const both = shown.bushing && fit !== null && pressed !== null;
  const leftOut = both ? (away !== null ? 'bushing' : inHole ? 'pressure' : null) : null;
  const { cut } = whole.shape;
  const piece = useMemo(() => {
    if (told !== 'new' && told !== 'done') return whole;
    return { ...whole, shape: wallWith(whole.shape, told === 'new' ? 'nothing' : 'low') };
  }, [whole, told]);
  const pass = usePasses(
    (state) => answerFor(state, bore, survey)?.plan.passes[state.pass]?.removal ?? null,
  );
  const layers = useMemo(() => layersOf(survey, cut, pass), [survey, cut, pass]);
  const circles = useMemo(
    () => (shown.circles ? circlesAt(survey, deep, units) : null),
    [shown.circles, survey, deep, units],
  );
  const ghost = useGhost(bore, survey, told !== null);
  const touched = useTouched(whole, survey, section === 'measure');
  const inHand = shown.readings ? touched : null;
  // Apart from the other lines, which follow the cursor.
  const press = useMemo(
    () =>
      pressed === null || leftOut === 'pressure' ? [] : pressStrokes(piece.shape, pressed.wall),
    [piece, pressed, leftOut],
  );
  const strokes = useMemo(() => {
    const { target, readings } = shown;
    return laidStrokes(piece, survey, {
      ...{ target, readings, circles, ghost, touched: inHand, away },
      pressed: press,
    });
  }, [piece, survey, shown, circles, ghost, inHand, away, press]);
  const seen = shown.bushing && leftOut !== 'bushing' ? fit : null;
  return useMemo(
    () => ({ shown, piece, layers, strokes, fit: seen, circles, ghost, pressed, leftOut }),
    [shown, piece, layers, strokes, seen, circles, ghost, pressed, leftOut],
  );
}

/** The stage that is laid over this one; none while a story is told, nor the stage itself. */
function useGhost(bore: BoreEvaluation, survey: SurveyEvaluation, told: boolean): Ghost | null {
  const index = useSession((session) => session.ghost);
  return useMemo(() => {
    const other = index === null || told ? undefined : bore.surveys[index];
    return other === undefined || other.id === survey.id ? null : ghostOf(other);
  }, [bore, survey, index, told]);
}

/** Where the gauge touches for the reading in hand: the one pointed at, else the cell that is typed into. */
function useTouched(piece: PieceFigure, survey: SurveyEvaluation, typing: boolean): Touched | null {
  const cursor = useCursor();
  const cell = useSession((session) => session.cell);
  const laid = useTable();
  const pointed = useMemo(() => readingNear(survey, piece, cursor), [survey, piece, cursor]);
  const typed = useMemo((): Touched | null => {
    if (!typing || laid === null) return null;
    const [row, column] = [laid.table.rows[cell.row], laid.table.clocks[cell.column]];
    if (!(row && column && row.z >= 0 && row.z <= piece.shape.length)) return null;
    const touches = touchesOf(laid.table.kind, column.theta, row.z);
    return { touches, instrument: laid.table.kind, suspect: false };
  }, [typing, laid, cell, piece]);
  return pointed ?? typed;
}
