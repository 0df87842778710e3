/** The grip of the cut line: where the bore is cut open to be rolled out. Dragged round the rim, or moved by keys. */
import { type KeyboardEvent, type PointerEvent, type RefObject, useRef } from 'react';
import { clockText, wrapAngle } from '../../job/clock.ts';
import { useSession } from '../../store/session.ts';
import { STEP_OF_CUT, snappedCut } from './cut.ts';

/** What the grip and the scene share: the scene puts the grip in its place and reads clock positions under a pointer. */
export interface CutHold {
  element: HTMLElement | null;
  /**
   * Clock position that the cut goes to when it is dragged from one point of the page to another, CSS pixels; null
   * before the scene is there.
   */
  thetaUnder: ((from: Point, to: Point, cut: number) => number | null) | null;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

const KEY_STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageUp: 4,
  PageDown: -4,
};

export function CutHandle({ hold }: { readonly hold: RefObject<CutHold> }) {
  const cut = useSession((session) => session.cut);
  const look = useSession((session) => session.look);
  const dragged = useRef<{ from: Point; cut: number } | null>(null);
  const onMove = (event: PointerEvent) => {
    if (dragged.current === null) return;
    const to = { x: event.clientX, y: event.clientY };
    const theta = hold.current.thetaUnder?.(dragged.current.from, to, dragged.current.cut);
    if (theta == null) return;
    const next = snappedCut(theta);
    if (Math.abs(next - useSession.getState().cut) > 1e-9) look({ cut: next });
  };
  const onKey = (event: KeyboardEvent) => {
    const steps = KEY_STEPS[event.key];
    if (steps === undefined) return;
    event.preventDefault();
    look({ cut: snappedCut(cut + steps * STEP_OF_CUT) });
  };
  return (
    <div
      ref={(element) => {
        hold.current.element = element;
      }}
      className="cut-handle"
      role="slider"
      tabIndex={0}
      aria-label="Cut line, where the bore is opened"
      aria-valuemin={0}
      aria-valuemax={11.75}
      aria-valuenow={wrapAngle(cut) / (4 * STEP_OF_CUT)}
      aria-valuetext={`at ${clockText(cut)}`}
      title={`Cut line at ${clockText(cut)}: drag it round the rim`}
      onKeyDown={onKey}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        dragged.current = { from: { x: event.clientX, y: event.clientY }, cut };
      }}
      onPointerMove={onMove}
      onPointerUp={() => {
        dragged.current = null;
      }}
      onPointerCancel={() => {
        dragged.current = null;
      }}
    >
      <svg viewBox="-14 -14 28 28" aria-hidden="true">
        <circle r="12" />
        <path d="M-9.5 0 -3.5 -4.5V4.5ZM9.5 0 3.5 -4.5V4.5Z" />
      </svg>
    </div>
  );
}
