/** What each size of target costs and leaves: three small charts, a handle to choose the size by, and the words. */
import {
  type KeyboardEvent,
  memo,
  type PointerEvent,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import {
  TradeOffChart,
  type TradeOffFrame,
  TradeOffHandle,
  tradeOffFrame,
} from '../../drawings/TradeOffChart.tsx';
import { type TradeOffFigure, tradeOffFigure } from '../../figures/tradeOff.ts';
import { formatAcross, inUnits, lengthMm, MM_PER_INCH } from '../../job/units.ts';
import { answerFor } from '../../store/aside.ts';
import { useTheme } from '../../store/theme.ts';
import { useTradeOff, wantTradeOff } from '../../store/tradeOff.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';
import { useSize } from '../useSize.ts';
import { SizesTable } from './SizesTable.tsx';
import { SizeWords } from './SizeWords.tsx';
import type { Worked } from './worked.ts';
import './tradeOff.css';

interface Props {
  readonly bench: Worked;
  /** mm across. */
  onChoose(diameter: number): void;
}

const Still = memo(TradeOffChart);
const StillKey = memo(Key);
const StillTable = memo(SizesTable);

export default function TradeOff({ bench, onChoose }: Props) {
  const { job, bore, survey, surveySeen } = bench;
  const settled = useEvaluation((state) => state.settled && state.of === job);
  const sizes = answerFor(useTradeOff(), bore, survey);
  useEffect(() => {
    if (settled) wantTradeOff({ job, bore, survey });
  }, [settled, job, bore, survey]);
  const theme = useTheme((state) => state.shown);
  const root = useRef<HTMLDivElement>(null);
  const { width } = useSize(root);
  const figure = useMemo(() => sizes && tradeOffFigure(sizes, job.units), [sizes, job.units]);
  const frame = useMemo(
    () => (figure === null || !(width > 0) ? null : tradeOffFrame(figure, width, theme)),
    [figure, width, theme],
  );
  const decided = lengthMm(bore.decisions.target);
  const chosen = decided > 0 ? decided : (surveySeen.target?.diameter ?? Number.NaN);
  return (
    <div className="trade-off" ref={root}>
      {figure === null || frame === null ? (
        <p className="soft">Working out the other sizes…</p>
      ) : (
        <>
          <div className="trade-off-chart" style={{ height: frame.height }}>
            <Still figure={figure} frame={frame} theme={theme} />
            <Handle {...{ figure, frame, theme, chosen, onChoose }} />
          </div>
          <SizeWords bench={bench} />
          <StillKey figure={figure} />
          <StillTable figure={figure} />
        </>
      )}
    </div>
  );
}

interface HandleProps {
  readonly figure: TradeOffFigure;
  readonly frame: TradeOffFrame;
  readonly theme: Parameters<typeof tradeOffFrame>[2];
  /** mm across; NaN: no size is chosen yet. */
  readonly chosen: number;
  onChoose(diameter: number): void;
}

/** How many steps a key moves it; Shift: ten times as far. */
const KEYS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -10,
  PageUp: 10,
};
/** Half the width of the grip, px: 48 in all. */
const GRIP = 24;

function Handle({ figure, frame, theme, chosen, onChoose }: HandleProps) {
  const { least, greatest, step, units } = figure;
  const [dragging, setDragging] = useState(false);
  const shown = inUnits(chosen, units);
  const middle = (least + greatest) / 2;
  const average = figure.marks.find(({ name }) => name === 'average round')?.at ?? middle;
  const at = Math.min(Math.max(Number.isNaN(shown) ? average : shown, least), greatest);
  const choose = (value: number) => {
    const steps = Math.round((Math.min(Math.max(value, least), greatest) - least) / step);
    onChoose((least + steps * step) * (units === 'in' ? MM_PER_INCH : 1));
  };
  const point = (event: PointerEvent<HTMLElement>) => {
    const box = event.currentTarget.parentElement!.getBoundingClientRect();
    choose(frame.x.invert(event.clientX - box.left));
  };
  const onKey = (event: KeyboardEvent) => {
    const steps = KEYS[event.key];
    const end = event.key === 'Home' ? least : event.key === 'End' ? greatest : null;
    if (steps === undefined && end === null) return;
    event.preventDefault();
    choose(end ?? at + (steps ?? 0) * step * (event.shiftKey ? 10 : 1));
  };
  const said = formatAcross(at * (units === 'in' ? MM_PER_INCH : 1), units);
  return (
    <>
      <div className="trade-off-mark" data-chosen={!Number.isNaN(shown)}>
        <TradeOffHandle figure={figure} frame={frame} theme={theme} at={at} />
      </div>
      <div
        className="trade-off-grip"
        style={{ left: frame.x(at) - GRIP, width: 2 * GRIP, height: frame.axis + GRIP }}
        role="slider"
        tabIndex={0}
        aria-label="Target diameter, across"
        aria-valuemin={least}
        aria-valuemax={greatest}
        aria-valuenow={at}
        aria-valuetext={Number.isNaN(shown) ? `none chosen yet; ${said}` : said}
        data-dragging={dragging}
        onKeyDown={onKey}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          setDragging(true);
        }}
        onPointerMove={(event) => dragging && point(event)}
        onPointerUp={() => setDragging(false)}
        onPointerCancel={() => setDragging(false)}
      />
    </>
  );
}

function Key({ figure }: { readonly figure: TradeOffFigure }) {
  const two = figure.panels.some(({ curves }) => curves.length > 1);
  return (
    <p className="trade-off-key">
      Held: where the bushing is tight against the wall once that size is ground
      {two
        ? '; full line the bushing at hand, dashed one made to suit, larger by the press fit'
        : ', for one made to suit, larger by the press fit'}
      . Gap: how far the largest place lies over the target. Shaded: give or take.
    </p>
  );
}
