import { paletteOf, type Theme } from '../figures/colour.ts';
import { describeMap, type MapFigure } from '../figures/map.ts';
import type { MapFrame } from '../figures/mapFrame.ts';
import { HatchPattern } from './Hatch.tsx';
import { round } from './ink.ts';
import { MapMarks } from './MapMarks.tsx';
import { MapScales } from './MapScales.tsx';
import { MapShading } from './MapShading.tsx';

interface Props {
  readonly map: MapFigure;
  readonly frame: MapFrame;
  readonly theme: Theme;
  /** Sets this drawing's own ids apart from those of others on the page. */
  readonly id: string;
}

/** The wall rolled out: bands, contours, hatching, zones, readings and scales. */
export function FlatMap({ map, frame, theme, id }: Props) {
  const { left, top, across, down } = frame;
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${round(frame.width)} ${round(frame.height)}`}
      width={round(frame.width)}
      height={round(frame.height)}
      role="img"
      aria-label={describeMap(map)}
    >
      <defs>
        <HatchPattern id={`${id}-hatch`} palette={paletteOf(theme)} />
        <clipPath id={`${id}-wall`}>
          <rect width={round(across)} height={round(down)} />
        </clipPath>
      </defs>
      <g transform={`translate(${left} ${top})`} clipPath={`url(#${id}-wall)`}>
        <MapShading map={map} frame={frame} theme={theme} hatch={`${id}-hatch`} />
        <MapMarks map={map} frame={frame} theme={theme} />
      </g>
      <MapScales map={map} frame={frame} theme={theme} />
    </svg>
  );
}
