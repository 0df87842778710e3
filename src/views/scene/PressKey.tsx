/** Key to the contact pressure, for map and drawing: what the lines, the ruled places, dot and ring mean. */
import type { ReactNode } from 'react';
import { GapPattern, PRESS_WIDTHS, Spot } from '../../drawings/PressureLines.tsx';
import type { Theme } from '../../figures/colour.ts';
import type { PressedWall } from '../../figures/pressedWall.ts';
import { pressKey } from '../../figures/pressedWords.ts';

interface Props {
  readonly pressed: PressedWall;
  readonly theme: Theme;
  readonly id: string;
  /** Little room: lines and ruled places alone, the figures at dot and ring are in the notebook. */
  readonly small: boolean;
}

export function PressKey({ pressed, theme, id, small }: Props) {
  const { lines, even, hardest, gaps } = pressKey(pressed);
  const presses = small ? '' : 'presses ';
  return (
    <ul className="press-key" aria-label="Key to the contact pressure">
      {lines !== null && (
        <li>
          <Sample width={4 + 6 * pressed.levels.length}>
            {pressed.levels.map(({ text }, i) => (
              <path
                key={text}
                d={`M${4 + 6 * i} 1V15`}
                stroke="currentColor"
                strokeWidth={PRESS_WIDTHS[i]}
              />
            ))}
          </Sample>
          {presses}
          {lines}
        </li>
      )}
      {even !== null && <li>presses evenly, {even}</li>}
      {hardest !== null && !small && (
        <li>
          <Sample width={16}>
            <Spot x={8} y={8} filled theme={theme} />
          </Sample>
          hardest {hardest}
        </li>
      )}
      {gaps !== null && (
        <li>
          <Sample width={26}>
            <defs>
              <GapPattern id={`${id}-gap-key`} theme={theme} />
            </defs>
            <rect
              x="0.5"
              y="0.5"
              width="25"
              height="15"
              fill={`url(#${id}-gap-key)`}
              stroke="currentColor"
              strokeDasharray="4 3"
            />
          </Sample>
          no contact
        </li>
      )}
      {gaps !== null && !small && (
        <li>
          <Sample width={16}>
            <Spot x={8} y={8} filled={false} theme={theme} />
          </Sample>
          widest gap {gaps}
        </li>
      )}
    </ul>
  );
}

function Sample({ width, children }: { readonly width: number; readonly children: ReactNode }) {
  return (
    <svg viewBox={`0 0 ${width} 16`} width={width} height="16" aria-hidden="true">
      {children}
    </svg>
  );
}
