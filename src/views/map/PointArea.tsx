/** A drawing to point in: by mouse, by a finger that is put down, by keys. */
import { type CSSProperties, type PointerEvent, type ReactNode, useRef } from 'react';
import { grownBy } from '../../figures/colour.ts';
import { useSession } from '../../store/session.ts';
import { useTheme } from '../../store/theme.ts';
import { moved } from './moved.ts';

interface Props {
  readonly className: string;
  readonly label: string;
  readonly style?: CSSProperties;
  /** The wall that keys move about on. */
  readonly wall: { readonly cut: number; readonly height: number };
  /** What a key stands for here; left out: itself. undefined: nothing. */
  readonly keyOf?: (key: string) => string | undefined;
  /**
   * Pointed at, px from the corner.
   * @param begins false while a pointer that is down goes on
   */
  readonly onPoint: (x: number, y: number, begins: boolean) => void;
  readonly children: ReactNode;
}

export function PointArea({ className, label, style, wall, keyOf, onPoint, children }: Props) {
  const down = useRef(false);
  // Where the theme draws all larger, a pixel of the drawing is larger on the screen too.
  const grown = useTheme(({ shown }) => grownBy(shown));
  const point = (event: PointerEvent<HTMLElement>, begins: boolean) => {
    const box = event.currentTarget.getBoundingClientRect();
    onPoint((event.clientX - box.left) / grown, (event.clientY - box.top) / grown, begins);
  };
  return (
    <div
      className={className}
      style={style}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved about in by keys
      tabIndex={0}
      aria-label={label}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        down.current = true;
        point(event, true);
      }}
      onPointerMove={(event) => {
        // A finger that only passes by points at nothing.
        if (event.pointerType !== 'mouse' && !down.current) return;
        point(event, !down.current);
      }}
      onPointerUp={() => {
        down.current = false;
      }}
      onPointerCancel={() => {
        down.current = false;
      }}
      onKeyDown={(event) => {
        const key = keyOf === undefined ? event.key : keyOf(event.key);
        if (key === undefined) return;
        const { cursor, look } = useSession.getState();
        const to = moved(cursor, key, event.shiftKey, wall);
        if (to === undefined) return;
        event.preventDefault();
        look({ cursor: to });
      }}
    >
      {children}
    </div>
  );
}
