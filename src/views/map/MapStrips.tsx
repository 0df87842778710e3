/** The two profiles beside the map, through the place pointed at; only axes while none is. */
import { useMemo } from 'react';
import { StripView } from '../../drawings/StripView.tsx';
import { paletteOf, type Theme } from '../../figures/colour.ts';
import type { MapFigure } from '../../figures/map.ts';
import type { MapSheet } from '../../figures/mapSheet.ts';
import { turned } from '../../figures/sample.ts';
import { signedText } from '../../figures/signed.ts';
import { MAP_UNIT_NAME } from '../../figures/steps.ts';
import { stripDown, stripRound, stripScale } from '../../figures/strips.ts';
import { type Wall, wallAt } from '../../figures/wall.ts';
import { clockText } from '../../job/clock.ts';
import { formatDepth } from '../../job/units.ts';
import type { Place } from '../../store/session.ts';

interface Props {
  readonly wall: Wall;
  readonly map: MapFigure;
  readonly sheet: MapSheet;
  readonly theme: Theme;
  readonly cursor: Place | null;
  readonly id: string;
}

export function MapStrips({ wall, map, sheet, theme, cursor, id }: Props) {
  const { below, beside, frame } = sheet;
  const { units, cut } = map;
  const scale = useMemo(() => stripScale(wall, units), [wall, units]);
  const z = cursor?.z ?? null;
  const theta = cursor?.theta ?? null;
  const round = useMemo(
    () => (z === null || below === null ? [] : stripRound(wall, cut, z)),
    [wall, cut, z, below],
  );
  const down = useMemo(
    () => (theta === null || beside === null ? [] : stripDown(wall, theta)),
    [wall, theta, beside],
  );
  if (scale === null) return null;
  const { inkSoft } = paletteOf(theme);
  const at = cursor === null ? null : wallAt(wall, cursor.theta, cursor.z);
  const text = at === null ? '' : signedText(at.deviation, at.give, units);
  const perSide = `${MAP_UNIT_NAME[units]} per side`;
  return (
    <svg
      className="map-strips"
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      width={sheet.width}
      height={sheet.height}
      role="img"
      aria-label={stripWords(cursor, text, perSide, units)}
    >
      {below !== null && (
        <>
          <StripView
            points={round}
            length={map.width}
            box={below}
            upright={false}
            at={cursor && { along: map.radius * turned(cursor.theta - cut), text }}
            {...{ scale, theme }}
            steps={map.steps}
            id={`${id}-round`}
          />
          <text x={below.left} y={below.top + below.height + 15} fill={inkSoft}>
            {cursor === null
              ? 'Point at the map: its profile comes here.'
              : `${below.width > 280 ? 'round the clock, ' : ''}${formatDepth(cursor.z, units)} deep`}
          </text>
          <text
            x={below.left + below.width}
            y={below.top + below.height + 15}
            textAnchor="end"
            fill={inkSoft}
          >
            {below.width > 420 ? `${perSide}, proud metal up` : perSide}
          </text>
        </>
      )}
      {beside !== null && (
        <>
          <StripView
            points={down}
            length={map.height}
            box={beside}
            upright
            at={cursor && { along: cursor.z, text }}
            {...{ scale, theme }}
            steps={map.steps}
            id={`${id}-down`}
          />
          <text x={beside.left} y={frame.top - 8} fill={inkSoft}>
            {cursor === null ? 'down the depth' : `down at ${clockText(cursor.theta)}`}
          </text>
        </>
      )}
    </svg>
  );
}

function stripWords(
  cursor: Place | null,
  text: string,
  perSide: string,
  units: MapFigure['units'],
): string {
  if (cursor === null) return 'Profiles round the clock and down the depth: point at the map.';
  const where = `${clockText(cursor.theta)}, ${formatDepth(cursor.z, units)} deep`;
  return `Profiles round the clock and down the depth through ${where}: ${text || 'not known'} ${perSide} there.`;
}
