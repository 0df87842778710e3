import { area, line } from 'd3';
import { colourOf, paletteOf, type Theme } from '../figures/colour.ts';
import type { StripBox } from '../figures/mapSheet.ts';
import type { Steps } from '../figures/steps.ts';
import { type StripPoint, type StripScale, stripRun } from '../figures/strips.ts';
import { round } from './ink.ts';

interface Props {
  readonly points: readonly StripPoint[];
  readonly scale: StripScale;
  readonly steps: Steps;
  readonly length: number;
  readonly box: StripBox;
  readonly upright: boolean;
  readonly theme: Theme;
  readonly id: string;
}

const STOPS = 16;
const known = ({ deviation }: StripPoint) => Number.isFinite(deviation);

/** The profile: filled to the line of right in the map's own colours, its give-or-take as a band around it. */
export function StripShade({ points, scale, steps, length, box, upright, theme, id }: Props) {
  const palette = paletteOf(theme);
  const { run, rise } = stripRun(scale, length, box, upright);
  const between = (a: (p: StripPoint) => number, b: (p: StripPoint) => number) => {
    const shape = area<StripPoint>().defined(known);
    const laid = upright
      ? shape
          .y((p) => run(p.along))
          .x0((p) => rise(a(p)))
          .x1((p) => rise(b(p)))
      : shape
          .x((p) => run(p.along))
          .y0((p) => rise(a(p)))
          .y1((p) => rise(b(p)));
    return laid(points) ?? '';
  };
  const curve =
    line<StripPoint>(
      (p) => (upright ? rise(p.deviation) : run(p.along)),
      (p) => (upright ? run(p.along) : rise(p.deviation)),
    ).defined(known)(points) ?? '';
  const colour = colourOf(steps, theme);
  const end = upright ? { x2: round(box.width), y2: 0 } : { x2: 0, y2: round(box.height) };
  return (
    <>
      <linearGradient id={id} gradientUnits="userSpaceOnUse" x1={0} y1={0} {...end}>
        {Array.from({ length: STOPS }, (_, i) => i / (STOPS - 1)).map((share) => (
          <stop
            key={share}
            offset={round(share)}
            stopColor={colour(scale.from + share * (scale.to - scale.from))}
          />
        ))}
      </linearGradient>
      <path
        d={between(
          () => 0,
          (p) => p.deviation,
        )}
        fill={`url(#${id})`}
      />
      <path
        d={between(
          (p) => p.deviation - (p.give || 0),
          (p) => p.deviation + (p.give || 0),
        )}
        fill={palette.ink}
        fillOpacity={0.08}
        stroke={palette.ink}
        strokeOpacity={0.55}
        strokeDasharray="1.5 2.5"
      />
      <path d={curve} fill="none" stroke={palette.ink} strokeWidth={2} />
    </>
  );
}
