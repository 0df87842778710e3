/** The target's centre to take hold of, where it is set by hand: dragged, or moved by arrow keys, map and costs follow. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { sectionScale } from '../../drawings/SectionView.tsx';
import { grownBy, paletteOf, type Theme } from '../../figures/colour.ts';
import type { SectionFigure } from '../../figures/sectionFigure.ts';
import { sayToward } from '../../figures/towardWords.ts';
import type { Units } from '../../job/schema.ts';
import { MM_PER_INCH } from '../../job/units.ts';
import { type ByHandAt, moveHand } from '../../store/centres.ts';

interface Props {
  readonly section: SectionFigure;
  readonly theme: Theme;
  readonly units: Units;
  /** px, both ways. */
  readonly size: number;
  readonly hand: ByHandAt;
  /** Called with true when a drag begins, with false when it ends. */
  onHold(held: boolean): void;
}

/** The least move, mm: of the target's own slider too. Shift: ten times as far. */
const STEP: Readonly<Record<Units, number>> = { in: 0.0001 * MM_PER_INCH, mm: 0.002 };
const KEYS: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
/** px: the grip, and half an arm of the cross. */
const GRIP = 48;
const ARM = 9;

/** Where a drag began, px on the screen. */
interface Hold {
  readonly left: number;
  readonly top: number;
  readonly from: ByHandAt;
}

export function CentreCross({ section, theme, units, size, hand, onHold }: Props) {
  const { x, y } = hand;
  const held = useRef<Hold | null>(null);
  const scale = sectionScale(section, size);
  const perMm = scale * section.exaggeration;
  const within = (px: number) => Math.min(Math.max(px, ARM), size - ARM);
  const left = within(size / 2 + scale * section.wanted.x + perMm * hand.aheadX);
  const top = within(size / 2 - scale * section.wanted.y - perMm * hand.aheadY);
  const onDown = (event: PointerEvent<HTMLElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { left: event.clientX, top: event.clientY, from: hand };
    onHold(true);
  };
  const onMove = (event: PointerEvent<HTMLElement>) => {
    if (held.current === null) return;
    const mm = (px: number) =>
      STEP[units] * Math.round(px / (perMm * grownBy(theme) * STEP[units]));
    const { left, top, from } = held.current;
    moveHand(from.bore, from.x + mm(event.clientX - left), from.y + mm(top - event.clientY));
  };
  const onUp = () => {
    held.current = null;
    onHold(false);
  };
  const onKey = (event: KeyboardEvent) => {
    const way = KEYS[event.key];
    if (way === undefined) return;
    event.preventDefault();
    const step = STEP[units] * (event.shiftKey ? 10 : 1);
    moveHand(hand.bore, x + way[0] * step, y + way[1] * step);
  };
  return (
    <div
      className="centre-cross"
      role="slider"
      tabIndex={0}
      aria-label="Centre of the target: drag it, or arrow keys, with Shift ten times as far"
      aria-valuenow={Number((Math.hypot(x, y) / (units === 'in' ? MM_PER_INCH : 1)).toFixed(5))}
      aria-valuemin={0}
      aria-valuetext={sayToward(x, y, units)}
      style={{ left: left - GRIP / 2, top: top - GRIP / 2, width: GRIP, height: GRIP }}
      onPointerDown={onDown}
      onPointerMove={onMove}
      onPointerUp={onUp}
      onPointerCancel={onUp}
      onKeyDown={onKey}
    >
      <Cross theme={theme} />
    </div>
  );
}

function Cross({ theme }: { readonly theme: Theme }) {
  const { ink, ground } = paletteOf(theme);
  const arms = `M${-ARM} 0H${ARM}M0 ${-ARM}V${ARM}`;
  return (
    <svg viewBox="-24 -24 48 48" width={GRIP} height={GRIP} aria-hidden="true" fill="none">
      <circle r={ARM + 4} fill={ground} fillOpacity={0.8} stroke={ink} strokeWidth={1.5} />
      <path d={arms} stroke={ink} strokeWidth={2.5} />
    </svg>
  );
}
