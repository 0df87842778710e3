/** Key to the lines that are laid over the bore and do not speak for themselves. */
import { LEFT_OUT } from '../../figures/sceneWords.ts';
import type { Overlaid } from './useOverlaid.ts';

/** Dashes of the samples, as the lines of the scene have them. */
const DASHES = { plug: '', average: '9 5', around: '2.5 4', target: '', ghost: '6 4' } as const;
const WIDTHS = { plug: 2, average: 2, around: 2.8, target: 3.2, ghost: 2.2 } as const;

interface Line {
  readonly kind: keyof typeof DASHES;
  readonly words: string;
}

function linesOf({ shown, circles, ghost }: Overlaid): Line[] {
  const lines: Line[] = [];
  if (shown.target) lines.push({ kind: 'target', words: 'size wanted' });
  for (const { kind, name, size } of circles?.circles ?? []) {
    lines.push({ kind, words: `${name} ${size}` });
  }
  if (ghost !== null) lines.push({ kind: 'ghost', words: ghost.name });
  return lines;
}

export function StageKey({ overlaid }: { readonly overlaid: Overlaid }) {
  const lines = linesOf(overlaid);
  const { circles, leftOut } = overlaid;
  if (lines.length === 0 && leftOut === null) return null;
  return (
    <ul className="stage-key" aria-label="Key to the lines">
      {lines.map(({ kind, words }) => (
        <li key={kind} data-kind={kind}>
          <svg viewBox="0 0 30 8" width="30" height="8" aria-hidden="true">
            <line
              x1="1"
              y1="4"
              x2="29"
              y2="4"
              strokeWidth={WIDTHS[kind]}
              strokeDasharray={DASHES[kind]}
            />
          </svg>
          {words}
        </li>
      ))}
      {leftOut !== null && <li>{LEFT_OUT[leftOut].key}</li>}
      {circles !== null && <li>all across, {circles.deep} deep</li>}
    </ul>
  );
}
