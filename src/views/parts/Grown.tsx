/** Room for a flat drawing, which is laid out for less where the theme draws letters and lines larger. */
import type { ReactNode } from 'react';
import { grownBy, type Theme } from '../../figures/colour.ts';

interface Props {
  readonly theme: Theme;
  /** Of the room, CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** Draws into a room of that size. */
  readonly children: (width: number, height: number) => ReactNode;
}

export function Grown({ theme, width, height, children }: Props) {
  const grown = grownBy(theme);
  return (
    <div style={{ width, height }}>
      <div
        style={{
          width: width / grown,
          height: height / grown,
          transform: `scale(${grown})`,
          transformOrigin: '0 0',
        }}
      >
        {children(width / grown, height / grown)}
      </div>
    </div>
  );
}
