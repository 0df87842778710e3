import { type Palette, paletteOf, type Theme } from '../figures/colour.ts';
import type { MapFigure } from '../figures/map.ts';
import type { MapFrame } from '../figures/mapFrame.ts';
import { MAP_UNIT_NAME } from '../figures/steps.ts';
import { LETTERS, round, WORDS } from './ink.ts';

interface Props {
  readonly map: MapFigure;
  readonly frame: MapFrame;
  readonly theme: Theme;
}

const SIZE = 12;
/** Hours are written no closer than this, px: every one, or every second, ... so that the cut has its own at both ends. */
const HOUR_APART = 20;
const HOURS = [1, 2, 3, 4, 6] as const;

/** Clock along the bottom, its hours again on top, depth down the left, which face it is seen from, where the load pulls. */
export function MapScales({ map, frame, theme }: Props) {
  const palette = paletteOf(theme);
  const { left, top, across, down } = frame;
  const bottom = top + down;
  const hours = HOURS.find((n) => (n * across) / 12 >= HOUR_APART) ?? 12;
  return (
    <g fontFamily={LETTERS} fontSize={SIZE} fill={palette.inkSoft}>
      <rect x={left} y={top} width={across} height={down} fill="none" stroke={palette.frame} />
      {thin(map.depthTicks, 15 / frame.scaleY, (tick) => tick.y).map(({ y, text }) => (
        <g key={text}>
          <path d={`M${left - 5} ${round(top + y * frame.scaleY)}h5`} stroke={palette.frame} />
          <text
            data-scale={`d${round(y)}`}
            x={left - 8}
            y={round(top + y * frame.scaleY + 4)}
            textAnchor="end"
          >
            {text}
          </text>
        </g>
      ))}
      {map.clockTicks.map(({ x, text }, i) => (
        <g key={x}>
          <path
            d={`M${round(left + x * frame.scaleX)} ${bottom}v5M${round(left + x * frame.scaleX)} ${top}v-4`}
            stroke={palette.frame}
          />
          {i % hours === 0 && (
            <text
              data-scale={`c${round(x)}`}
              x={round(left + x * frame.scaleX)}
              y={bottom + 18}
              textAnchor="middle"
            >
              {text}
            </text>
          )}
        </g>
      ))}
      <Heads map={map} frame={frame} palette={palette} />
    </g>
  );
}

/** Nothing where the map is in true proportion, or so nearly that nobody sees it. */
function stretchWords(stretch: number): string {
  return Math.abs(stretch - 1) < 0.05 ? '' : ` · depth ×${stretch.toFixed(1)}`;
}

/** Every n-th tick, so that none comes closer to the next than `least`. */
function thin<T>(ticks: readonly T[], least: number, at: (tick: T) => number): T[] {
  const [first, second] = ticks;
  if (first === undefined || second === undefined) return [...ticks];
  const every = Math.max(1, Math.ceil(least / (at(second) - at(first))));
  return ticks.filter((_, i) => i % every === 0);
}

interface HeadsProps {
  readonly map: MapFigure;
  readonly frame: MapFrame;
  readonly palette: Palette;
}

/** Room between two things of the line over the map, and the size of its words, px. */
const APART = 5;
const HEAD = 13;
const WORD = 0.46 * HEAD;

/** The line over the map: which way it is seen, its unit, and a flag on the edge where the load pulls. */
function Heads({ map, frame, palette }: HeadsProps) {
  const { left, top } = frame;
  const { seen, unit, from, to, flag } = wordsOver(map, frame);
  return (
    <g fontFamily={WORDS} fontSize={HEAD}>
      <text x={round(left + from)} y={top - 8}>
        {seen}
      </text>
      <text x={round(left + to)} y={top - 8} textAnchor="end">
        {unit}
      </text>
      {flag !== null && (
        <g fill={palette.ink}>
          <title>load</title>
          <path d={`M${round(left + flag.x)} ${top - 1}l-6 -10h12z`} />
          {flag.worded && (
            <text x={round(left + flag.from + (flag.ahead ? 15 : 0))} y={top - 8}>
              load
            </text>
          )}
        </g>
      )}
    </g>
  );
}

/** A flag and its word: which way the word stands, and what both take of the line, px from the map's left edge. */
interface Flag {
  readonly x: number;
  readonly ahead: boolean;
  /** False where there is no room for its word. */
  readonly worded: boolean;
  readonly from: number;
  readonly to: number;
}

function flagAt(x: number, across: number, worded: boolean): Flag {
  const wide = worded ? 4 * WORD + 15 : 13;
  const ahead = x + wide < across;
  return { x, ahead, worded, from: ahead ? x - 7 : x + 7 - wide, to: ahead ? x - 7 + wide : x + 7 };
}

interface Words {
  /** Which way it is seen, and the unit. */
  readonly seen: string;
  readonly unit: string;
  /** Where the first words begin and the last ones end, px from the map's left edge. */
  readonly from: number;
  readonly to: number;
  readonly flag: Flag | null;
}

/** The longest words of the line that leave each other and the flag room; the shortest where none does. */
function wordsOver(map: MapFigure, { across, stretch, scaleX }: MapFrame): Words {
  const perSide = `${MAP_UNIT_NAME[map.units]} per side`;
  const stretched = `${perSide}${stretchWords(stretch)}`;
  const choices = [
    [`rim · ${map.face}`, stretched, true],
    [map.face, stretched, true],
    [map.face, perSide, true],
    [map.face.replace('seen ', ''), perSide, true],
    [map.face.replace('seen ', ''), perSide, false],
    [perSide, map.face.replace('seen ', ''), false],
  ] as const;
  const laid = choices.map(([seen, unit, worded]) => {
    const flag = map.load === null ? null : flagAt(map.load * scaleX, across, worded);
    const [first, last] = [seen.length * WORD, unit.length * WORD];
    const [from, to] = clearOf(flag, first, last, across);
    return { seen, unit, from, to, flag, fits: to - last >= from + first + APART };
  });
  return laid.find(({ fits }) => fits) ?? laid.at(-1)!;
}

/** Where the first words begin and the last ones end, so that both are clear of the flag. */
function clearOf(flag: Flag | null, first: number, last: number, across: number): [number, number] {
  if (flag === null) return [0, across];
  const from = flag.from < first + APART ? Math.max(0, flag.to + APART) : 0;
  const to = flag.to > across - last - APART ? Math.min(across, flag.from - APART) : across;
  return [from, to];
}
