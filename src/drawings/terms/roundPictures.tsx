/** Terms of what one sees looking into the bore: its shape, the clock, and the gauges that go round it. */
import type { ReactNode } from 'react';
import type { TermId } from '../../figures/termNames.ts';
import {
  Arrow,
  at,
  Dot,
  egg,
  HEIGHT,
  Label,
  Meant,
  MIDDLE,
  NEW,
  oval,
  ringPath,
  round,
  type Shape,
  Wall,
  WIDTH,
} from './ring.tsx';

type RoundTerm = Extract<
  TermId,
  | 'out-of-round'
  | 'egg'
  | 'oval'
  | 'lobes'
  | 'clock-pair'
  | 'clock-position'
  | 'face-a'
  | 'set-up'
  | 'sweep'
  | 'wall-thickness'
  | 'boss'
  | 'old-centre'
>;

const threeLobed: Shape = (theta) => NEW + 5 * Math.cos(3 * theta);
const HOURS = Array.from({ length: 12 }, (_, index) => index + 1);

/** Two side by side. */
const LEFT = { x: 62, y: MIDDLE.y };
const RIGHT = { x: WIDTH - 62, y: MIDDLE.y };

/** Right through the bore at a clock pair. */
function Through({ shape, hour, label }: { shape: Shape; hour: number; label: string }) {
  const radius = (h: number) => shape((h * Math.PI) / 6);
  const end = at(radius(hour), hour);
  return (
    <>
      <Arrow from={at(radius(hour + 6), hour + 6)} to={end} both />
      <Label x={MIDDLE.x + 6} y={hour === 12 ? MIDDLE.y - 14 : MIDDLE.y + 16}>
        {label}
      </Label>
    </>
  );
}

function Clock({ from = MIDDLE, mirrored = false }: { from?: typeof MIDDLE; mirrored?: boolean }) {
  return HOURS.filter((hour) => hour % 3 === 0).map((hour) => {
    const { x, y } = at(NEW - 10, mirrored ? 12 - hour : hour, from);
    return (
      <Label key={hour} x={x} y={y + 4} anchor="middle">
        {hour}
      </Label>
    );
  });
}

function Indicator({ hour }: { readonly hour: number }) {
  const tip = at(NEW, hour);
  const dial = at(15, hour);
  return (
    <>
      <line {...ends(MIDDLE, tip)} stroke="var(--ink)" strokeWidth={2} />
      <circle
        cx={dial.x}
        cy={dial.y}
        r={9}
        fill="var(--card)"
        stroke="var(--ink)"
        strokeWidth={2}
      />
      <Dot {...tip} colour="var(--copper)" />
      <Dot {...MIDDLE} />
    </>
  );
}

function ends(from: { x: number; y: number }, to: { x: number; y: number }) {
  return { x1: from.x, y1: from.y, x2: to.x, y2: to.y };
}

export const ROUND_PICTURES: Readonly<Record<RoundTerm, () => ReactNode>> = {
  'out-of-round': () => (
    <>
      <Wall shape={oval} />
      <Through shape={oval} hour={12} label="greatest" />
      <Through shape={oval} hour={3} label="least" />
    </>
  ),
  egg: () => (
    <>
      <Wall shape={egg} />
      <Meant radius={NEW} />
      <Arrow from={at(NEW - 16, 6)} to={at(NEW + 10, 6)} colour="var(--copper)" />
      <Label x={WIDTH - 4} y={HEIGHT - 6} anchor="end">
        worn this way only
      </Label>
    </>
  ),
  oval: () => (
    <>
      <Wall shape={oval} />
      <Meant radius={NEW} />
      <Arrow from={at(NEW - 16, 12)} to={at(NEW + 6, 12)} colour="var(--copper)" />
      <Arrow from={at(NEW - 16, 6)} to={at(NEW + 6, 6)} colour="var(--copper)" />
    </>
  ),
  lobes: () => (
    <>
      <Wall shape={threeLobed} />
      {[12, 4, 8].map((hour) => (
        <Dot key={hour} {...at(NEW + 5, hour)} colour="var(--copper)" />
      ))}
      <Through shape={threeLobed} hour={12} label="" />
      <Label x={WIDTH - 4} y={18} anchor="end">
        three lobes
      </Label>
    </>
  ),
  'clock-pair': () => (
    <>
      <Wall shape={round} />
      {[12, 2, 4].map((hour) => (
        <line
          key={hour}
          {...ends(at(NEW, hour), at(NEW, hour + 6))}
          stroke={hour === 2 ? 'var(--ink)' : 'var(--line-strong)'}
          strokeWidth={2}
          strokeDasharray={hour === 2 ? undefined : '4 3'}
        />
      ))}
      <Dot {...at(NEW, 2)} colour="var(--copper)" />
      <Dot {...at(NEW, 8)} colour="var(--copper)" />
      <Label {...at(NEW + 30, 2)}>2–8</Label>
    </>
  ),
  'clock-position': () => (
    <>
      <Wall shape={round} />
      <Clock />
      <Dot {...at(NEW, 4.5)} colour="var(--copper)" />
      <Label {...at(NEW + 26, 4.2)}>4:30</Label>
      <Dot {...at(NEW + 9, 12)} />
      <Label x={MIDDLE.x + 26} y={13}>
        punch mark
      </Label>
    </>
  ),
  'face-a': () => (
    <>
      <Wall shape={round} from={LEFT} />
      <Wall shape={round} from={RIGHT} />
      <Clock from={LEFT} />
      <Clock from={RIGHT} mirrored />
      <Label x={LEFT.x} y={LEFT.y + 4} anchor="middle">
        A
      </Label>
      <Label x={RIGHT.x} y={RIGHT.y + 4} anchor="middle">
        B
      </Label>
    </>
  ),
  'set-up': () => (
    <>
      <Wall shape={round} />
      <Meant radius={NEW - 9} from={{ x: MIDDLE.x + 6, y: MIDDLE.y - 4 }} />
      <Dot {...MIDDLE} />
      <Dot x={MIDDLE.x + 6} y={MIDDLE.y - 4} colour="var(--teal)" />
      <Label x={WIDTH - 4} y={HEIGHT - 6} anchor="end">
        spindle, a little off
      </Label>
    </>
  ),
  sweep: () => (
    <>
      <Wall shape={egg} />
      <path
        d={ringPath(() => NEW - 7)}
        fill="none"
        stroke="var(--copper)"
        strokeWidth={1.5}
        strokeDasharray="4 3"
      />
      <Indicator hour={2} />
    </>
  ),
  'wall-thickness': () => (
    <>
      <Wall shape={egg} />
      <Arrow from={at(NEW, 12)} to={at(58, 12)} both colour="var(--copper)" />
      <Arrow from={at(NEW + 10, 6)} to={at(58, 6)} both colour="var(--copper)" />
      <Label x={MIDDLE.x + 12} y={22}>
        thick
      </Label>
      <Label x={MIDDLE.x + 12} y={HEIGHT - 10}>
        thin: worn here
      </Label>
    </>
  ),
  boss: () => (
    <>
      <Wall shape={round} />
      <path d={ringPath(() => 58)} fill="none" stroke="var(--ink)" strokeWidth={2} />
      <Label {...at(44, 12)} anchor="middle">
        boss
      </Label>
      <Label x={MIDDLE.x} y={MIDDLE.y + 4} anchor="middle">
        bore
      </Label>
    </>
  ),
  'old-centre': () => (
    <>
      <Wall shape={egg} />
      <Meant radius={NEW} />
      <Dot {...MIDDLE} colour="var(--teal)" />
      <Dot x={MIDDLE.x} y={MIDDLE.y + 8} colour="var(--copper)" />
      <Label x={MIDDLE.x + 9} y={MIDDLE.y - 2} colour="var(--teal-text)">
        old
      </Label>
      <Label x={MIDDLE.x - 9} y={MIDDLE.y + 18} anchor="end" colour="var(--copper-text)">
        moved
      </Label>
    </>
  ),
};
