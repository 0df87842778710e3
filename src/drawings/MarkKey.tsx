import { paletteOf, type Theme } from '../figures/colour.ts';
import type { KeyMark, MarkKind } from '../figures/markKey.ts';
import { HatchPattern } from './Hatch.tsx';
import { Dot, NextRing, Spot } from './MapMarks.tsx';
import { SureLine } from './SureLine.tsx';

interface Props {
  readonly marks: readonly KeyMark[];
  readonly theme: Theme;
  readonly id: string;
}

const WIDTH = 26;
const HEIGHT = 18;

/** A sample of each mark and what it means. */
export function MarkKey({ marks, theme, id }: Props) {
  return (
    <ul className="mark-key" aria-label="Key to the marks">
      {marks.map(({ kind, words }) => (
        <li key={kind}>
          <svg
            xmlns="http://www.w3.org/2000/svg"
            viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
            width={WIDTH}
            height={HEIGHT}
            aria-hidden="true"
          >
            <Sample kind={kind} theme={theme} hatch={`${id}-${kind}`} />
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}

interface SampleProps {
  readonly kind: MarkKind;
  readonly theme: Theme;
  readonly hatch: string;
}

function Sample({ kind, theme, hatch }: SampleProps) {
  const palette = paletteOf(theme);
  const [x, y] = [WIDTH / 2, HEIGHT / 2];
  switch (kind) {
    case 'high':
    case 'low':
      return <Spot x={x} y={y} kind={kind} theme={theme} />;
    case 'load':
      return <path d={`M${x} ${y + 5}l-6 -10h12z`} fill={palette.ink} />;
    case 'sure':
    case 'possible':
      return (
        <SureLine
          lines={[
            [
              [0, y - 3],
              [WIDTH, y - 3],
            ],
          ]}
          kind={kind}
          theme={theme}
        />
      );
    case 'unsure':
      return (
        <>
          <defs>
            <HatchPattern id={hatch} palette={palette} />
          </defs>
          <rect x={1} y={3} width={WIDTH - 2} height={HEIGHT - 6} fill={palette.paper} />
          <rect
            x={1}
            y={3}
            width={WIDTH - 2}
            height={HEIGHT - 6}
            fill={`url(#${hatch})`}
            stroke={palette.frame}
          />
        </>
      );
    case 'next':
      return <NextRing x={x} y={y} theme={theme} />;
    case 'reading':
    case 'doubt':
      return <Dot x={x} y={y} suspect={kind === 'doubt'} theme={theme} />;
    case 'keepout':
      return (
        <rect
          x={6}
          y={3}
          width={14}
          height={12}
          rx={6}
          fill={palette.ground}
          stroke={palette.ink}
        />
      );
    case 'seat':
      return (
        <path
          d={`M0 ${y}H${WIDTH}`}
          stroke={palette.ink}
          strokeWidth={1.5}
          strokeDasharray="10 4 2 4"
        />
      );
  }
}
