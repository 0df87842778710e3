/** Terms of sizes: what is counted how, what is aimed at, and what is over or missing. */
import type { ReactNode } from 'react';
import type { TermId } from '../../figures/termNames.ts';
import {
  Arrow,
  at,
  Between,
  Dot,
  HEIGHT,
  Label,
  Meant,
  MIDDLE,
  NEW,
  round,
  type Shape,
  Wall,
  WIDTH,
  worn,
} from './ring.tsx';

type SizeTerm = Extract<
  TermId,
  | 'per-side'
  | 'across'
  | 'give-or-take'
  | 'target'
  | 'high-spot'
  | 'low-spot'
  | 'telescoping-gauge'
  | 'biggest-plug'
  | 'average-round'
  | 'clean-up'
  | 'repeats'
  | 'press-fit'
  | 'play'
>;

const higher: Shape = (theta) => Math.max(NEW, worn(theta));
const lower: Shape = (theta) => Math.min(NEW, worn(theta));
/** Farthest in and farthest out that the worn wall of the pictures comes. */
const RADII = Array.from({ length: 96 }, (_, step) => worn((step / 48) * Math.PI));
const TOUCHES = Math.min(...RADII);
const CLEANS = Math.max(...RADII);

function Figures({ spread, y, label }: { spread: readonly number[]; y: number; label: string }) {
  return (
    <>
      {spread.map((x) => (
        <Dot key={x} x={MIDDLE.x + x} y={y} />
      ))}
      <Label x={MIDDLE.x} y={y + 26} anchor="middle">
        {label}
      </Label>
    </>
  );
}

export const SIZE_PICTURES: Readonly<Record<SizeTerm, () => ReactNode>> = {
  'per-side': () => (
    <>
      <Wall shape={worn} />
      <Meant radius={NEW} />
      <Arrow from={at(NEW - 24, 3)} to={at(worn(Math.PI / 2), 3)} colour="var(--copper)" />
      <Arrow from={at(NEW + 18, 3)} to={at(NEW, 3)} colour="var(--teal)" />
      <Label x={WIDTH - 4} y={MIDDLE.y - 14} anchor="end">
        one side
      </Label>
    </>
  ),
  across: () => (
    <>
      <Wall shape={round} />
      <Arrow from={at(NEW, 9)} to={at(NEW, 3)} both />
      <Label x={MIDDLE.x} y={MIDDLE.y - 8} anchor="middle">
        across
      </Label>
    </>
  ),
  'give-or-take': () => (
    <>
      <rect
        x={MIDDLE.x - 50}
        y={MIDDLE.y - 26}
        width={100}
        height={52}
        fill="var(--accent-ground)"
      />
      <line
        x1={20}
        x2={WIDTH - 20}
        y1={MIDDLE.y}
        y2={MIDDLE.y}
        stroke="var(--ink)"
        strokeWidth={2}
      />
      <Arrow from={{ x: MIDDLE.x, y: MIDDLE.y - 36 }} to={{ x: MIDDLE.x, y: MIDDLE.y - 3 }} />
      <Label x={MIDDLE.x - 50} y={MIDDLE.y + 42} anchor="middle">
        less
      </Label>
      <Label x={MIDDLE.x + 50} y={MIDDLE.y + 42} anchor="middle">
        more
      </Label>
      <Label x={MIDDLE.x} y={MIDDLE.y - 42} anchor="middle">
        figure
      </Label>
    </>
  ),
  target: () => (
    <>
      <Wall shape={worn} />
      <Between inner={lower} outer={() => NEW} fill="var(--copper)" />
      <Between inner={() => NEW} outer={higher} fill="var(--teal)" />
      <Meant radius={NEW} colour="var(--ink)" />
    </>
  ),
  'high-spot': () => (
    <>
      <Wall shape={worn} />
      <Between inner={lower} outer={() => NEW} fill="var(--copper)" />
      <Meant radius={NEW} colour="var(--ink)" />
      <Label {...at(16, 3)} anchor="middle">
        −3.5
      </Label>
    </>
  ),
  'low-spot': () => (
    <>
      <Wall shape={worn} />
      <Between inner={() => NEW} outer={higher} fill="var(--teal)" />
      <Meant radius={NEW} colour="var(--ink)" />
      <Label {...at(24, 6)} anchor="middle">
        +4.1
      </Label>
    </>
  ),
  'telescoping-gauge': () => (
    <>
      <Wall shape={round} />
      <rect
        x={MIDDLE.x - NEW}
        y={MIDDLE.y - 6}
        width={2 * NEW}
        height={12}
        rx={5}
        fill="var(--card)"
        stroke="var(--ink)"
        strokeWidth={2}
      />
      <circle
        cx={MIDDLE.x}
        cy={MIDDLE.y}
        r={10}
        fill="var(--card)"
        stroke="var(--ink)"
        strokeWidth={2}
      />
      <Dot {...at(NEW, 3)} colour="var(--copper)" />
      <Dot {...at(NEW, 9)} colour="var(--copper)" />
    </>
  ),
  'biggest-plug': () => (
    <>
      <Wall shape={worn} />
      <circle {...centre} r={TOUCHES} fill="var(--accent-ground)" stroke="var(--ink)" />
      <Label x={MIDDLE.x} y={MIDDLE.y + 4} anchor="middle">
        plug
      </Label>
    </>
  ),
  'average-round': () => (
    <>
      <Wall shape={worn} />
      <Meant radius={NEW} />
      <Label x={MIDDLE.x} y={MIDDLE.y + 4} anchor="middle" colour="var(--teal-text)">
        average
      </Label>
    </>
  ),
  'clean-up': () => (
    <>
      <Wall shape={worn} />
      <Between inner={worn} outer={() => CLEANS} fill="var(--copper)" />
      <Meant radius={CLEANS} colour="var(--ink)" />
      <Label x={MIDDLE.x} y={MIDDLE.y + 4} anchor="middle">
        all comes off
      </Label>
    </>
  ),
  repeats: () => (
    <>
      <line x1={20} x2={WIDTH - 20} y1={46} y2={46} stroke="var(--line-strong)" />
      <Figures spread={[-70, -8, 4, 61]} y={46} label="far apart: read again" />
      <line x1={20} x2={WIDTH - 20} y1={100} y2={100} stroke="var(--line-strong)" />
      <Figures spread={[-9, -3, 2, 8]} y={100} label="near together" />
    </>
  ),
  'press-fit': () => (
    <>
      <Wall shape={round} />
      <circle {...centre} r={NEW + 5} fill="none" stroke="var(--copper)" strokeWidth={2} />
      <circle {...centre} r={NEW - 10} fill="none" stroke="var(--copper)" strokeWidth={2} />
      <Label x={MIDDLE.x} y={MIDDLE.y + 4} anchor="middle" colour="var(--copper-text)">
        bushing
      </Label>
      <Label x={WIDTH - 4} y={HEIGHT - 6} anchor="end">
        larger than its hole
      </Label>
    </>
  ),
  play: () => (
    <>
      <Wall shape={round} />
      <circle
        cx={MIDDLE.x}
        cy={MIDDLE.y + 7}
        r={NEW - 7}
        fill="var(--accent-ground)"
        stroke="var(--ink)"
      />
      <Label x={MIDDLE.x} y={MIDDLE.y + 12} anchor="middle">
        pin
      </Label>
      <Arrow from={at(NEW, 12)} to={at(NEW - 14, 12)} both colour="var(--copper)" />
      <Label x={WIDTH - 4} y={22} anchor="end">
        play
      </Label>
    </>
  ),
};

const centre = { cx: MIDDLE.x, cy: MIDDLE.y } as const;
