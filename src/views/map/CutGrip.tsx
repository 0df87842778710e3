/** The map's clock scale to take hold of: drawn sideways, or moved by arrow keys, it cuts the map open elsewhere. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { MapFrame } from '../../figures/mapFrame.ts';
import { clockText, hourText } from '../../job/clock.ts';
import { useSession } from '../../store/session.ts';
import { nearestQuarter } from './pointing.ts';

const HOUR = Math.PI / 6;
const KEYS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
};

export function CutGrip({ frame, cut }: { readonly frame: MapFrame; readonly cut: number }) {
  const look = useSession((session) => session.look);
  const held = useRef<{ readonly x: number; readonly cut: number } | null>(null);
  const onDown = (event: PointerEvent<HTMLElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { x: event.clientX, cut };
  };
  const onMove = (event: PointerEvent<HTMLElement>) => {
    if (held.current === null) return;
    // The wall goes with the pointer, so that the cut goes the other way.
    const across = event.currentTarget.getBoundingClientRect().width;
    const turn = (2 * Math.PI * (event.clientX - held.current.x)) / across;
    const next = nearestQuarter(held.current.cut - turn);
    if (next !== useSession.getState().cut) look({ cut: next });
  };
  const onUp = () => {
    held.current = null;
  };
  const onKey = (event: KeyboardEvent) => {
    const way = KEYS[event.key];
    if (way === undefined) return;
    event.preventDefault();
    look({ cut: nearestQuarter(cut + way * (event.shiftKey ? HOUR : HOUR / 4)) });
  };
  return (
    <div
      className="cut-grip"
      role="slider"
      tabIndex={0}
      aria-label="Where the map is cut open: drag the clock scale sideways, or arrow keys by a quarter of an hour"
      aria-valuemin={0}
      aria-valuemax={11.75}
      aria-valuenow={Number((cut / HOUR).toFixed(2))}
      aria-valuetext={clockText(cut)}
      title="Drag sideways: cut the map open elsewhere"
      style={{ left: frame.left, top: frame.top + frame.down, width: frame.across }}
      onPointerDown={onDown}
      onPointerMove={onMove}
      onPointerUp={onUp}
      onPointerCancel={onUp}
      onKeyDown={onKey}
    >
      <span className="cut-end">{hourText(cut)}</span>
      <span className="cut-end">{hourText(cut)}</span>
    </div>
  );
}
