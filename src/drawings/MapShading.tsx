import { colourRamp, levelColours, paletteOf, type Theme } from '../figures/colour.ts';
import type { Point, Polyline } from '../figures/contours.ts';
import type { MapFigure, Rings } from '../figures/map.ts';
import type { MapFrame } from '../figures/mapFrame.ts';
import { RAMP_COLOURS, shadingImage } from '../figures/shadingImage.ts';
import { pathOf, round } from './ink.ts';
import { SureLine } from './SureLine.tsx';

interface Props {
  readonly map: MapFigure;
  readonly frame: MapFrame;
  readonly theme: Theme;
  /** Id of the hatch pattern. */
  readonly hatch: string;
}

/** The wall's colours, contour lines (unbroken high, dashed low) and hatching, from the plot's own corner. */
export function MapShading({ map, frame, theme, hatch }: Props) {
  const palette = paletteOf(theme);
  const ramp = colourRamp(map.steps, theme, RAMP_COLOURS);
  const image = shadingImage(map.shade, ramp, palette.unknown);
  const lineColours = levelColours(map.steps, theme);
  const fill = (rings: Rings) =>
    rings.map((ring) => pathOf(ring, true, frame.scaleX, frame.scaleY)).join('');
  const scaled = (lines: readonly Polyline[]) =>
    lines.map(({ points, closed }) =>
      (closed ? [...points, points[0]!] : points).map(
        ([x, y]): Point => [x * frame.scaleX, y * frame.scaleY],
      ),
    );
  return (
    <>
      <image
        href={image.href}
        x={round((frame.across * (1 - image.wide)) / 2)}
        y={round((frame.down * (1 - image.high)) / 2)}
        width={round(frame.across * image.wide)}
        height={round(frame.down * image.high)}
        preserveAspectRatio="none"
      />
      {map.unknown.length > 0 && (
        <path d={fill(map.unknown)} fill={palette.unknown} fillRule="evenodd" />
      )}
      {map.doubtful.length > 0 && (
        <path d={fill(map.doubtful)} fill={`url(#${hatch})`} fillRule="evenodd" />
      )}
      {map.lines.map(({ level, lines }, i) => (
        <path
          key={level}
          d={lines
            .map((line) => pathOf(line.points, line.closed, frame.scaleX, frame.scaleY))
            .join('')}
          fill="none"
          stroke={lineColours[i]}
          strokeWidth={1}
          strokeDasharray={level > 0 ? '5 3' : undefined}
        />
      ))}
      {map.possible.length > 0 && (
        <SureLine lines={scaled(map.possible)} kind="possible" theme={theme} />
      )}
      {map.sure.length > 0 && <SureLine lines={scaled(map.sure)} kind="sure" theme={theme} />}
    </>
  );
}
