import { paletteOf, type Theme } from '../figures/colour.ts';
import { placeLabels } from '../figures/labels.ts';
import type { MapFigure, MapKeepout } from '../figures/map.ts';
import type { MapFrame } from '../figures/mapFrame.ts';
import { FigureSlip } from './FigureSlip.tsx';
import { LETTER, round } from './ink.ts';

interface Props {
  readonly map: MapFigure;
  readonly frame: MapFrame;
  readonly theme: Theme;
  /** True where depth runs to the right (`lying`): the ends of a seat stand upright then. */
  readonly lying?: boolean;
}

const SIZE = 14;
/** Beyond this many, dots would hide the wall. */
const MOST_DOTS = 600;

/** What lies on the wall: where not to grind, the bushing's seat, where readings touched, and the zones' peaks. */
export function MapMarks({ map, frame, theme, lying = false }: Props) {
  const palette = paletteOf(theme);
  const every = Math.ceil(map.marks.length / MOST_DOTS);
  const labels = map.zones.map((zone) => ({
    ...zone,
    x: zone.x * frame.scaleX,
    y: zone.y * frame.scaleY,
    reach: zone.reach * Math.min(frame.scaleX, frame.scaleY),
  }));
  const taken = map.next.map(({ x, y }) => ({
    x: x * frame.scaleX,
    y: y * frame.scaleY,
    width: 18,
    height: 18,
  }));
  const box = { width: frame.across, height: frame.down };
  const placed = placeLabels(labels, box, LETTER * SIZE, SIZE + 2, taken);
  return (
    <>
      {map.seats.map(({ from, to }) => (
        <path
          key={`${from} ${to}`}
          d={[from, to]
            .map((z) =>
              lying
                ? `M${round(z * frame.scaleX)} 0v${round(frame.down)}`
                : `M0 ${round(z * frame.scaleY)}h${round(frame.across)}`,
            )
            .join('')}
          stroke={palette.ink}
          strokeWidth={1.5}
          strokeDasharray="10 4 2 4"
          fill="none"
        />
      ))}
      {map.keepouts.map((keepout) => (
        <Keepout key={boxKey(keepout)} keepout={keepout} frame={frame} theme={theme} />
      ))}
      {map.marks.map((mark, i) =>
        mark.suspect || i % every === 0 ? (
          <Dot
            key={`${mark.row} ${round(mark.x)}`}
            x={round(mark.x * frame.scaleX)}
            y={round(mark.y * frame.scaleY)}
            suspect={mark.suspect}
            theme={theme}
          />
        ) : null,
      )}
      {map.next.map((place) => (
        <NextRing
          key={`next ${place.x}`}
          x={round(place.x * frame.scaleX)}
          y={round(place.y * frame.scaleY)}
          theme={theme}
        />
      ))}
      {placed.map(({ label, x, y }) => (
        <g key={`${label.x} ${label.y}`}>
          <Spot x={round(label.x)} y={round(label.y)} kind={label.kind} theme={theme} />
          <FigureSlip size={SIZE} text={label.text} x={x} y={y} theme={theme} />
        </g>
      ))}
    </>
  );
}

function boxKey({ kind, boxes }: MapKeepout): string {
  return `${kind} ${boxes[0]?.x} ${boxes[0]?.y}`;
}

interface SpotProps {
  readonly x: number;
  readonly y: number;
  readonly kind: 'high' | 'low';
  readonly theme: Theme;
}

/** The very place of a zone's peak: a hill where metal stands proud, a hollow where it is missing. */
export function Spot({ x, y, kind, theme }: SpotProps) {
  const { ink, ground } = paletteOf(theme);
  const high = kind === 'high';
  return (
    <path
      d={`M${x} ${round(y - (high ? 4 : -4))}l-5 ${high ? 8 : -8}h10z`}
      fill={high ? ink : ground}
      stroke={high ? ground : ink}
      strokeWidth={1.2}
    />
  );
}

interface DotProps {
  readonly x: number;
  readonly y: number;
  readonly suspect: boolean;
  readonly theme: Theme;
}

/** A dot where a gauge touched; a cross where that reading is in doubt. */
export function Dot({ x, y, suspect, theme }: DotProps) {
  const { ink, ground } = paletteOf(theme);
  if (suspect) {
    const d = `M${round(x - 4)} ${round(y - 4)}l8 8m0 -8l-8 8`;
    return (
      <>
        <path d={d} stroke={ground} strokeWidth={5} />
        <path d={d} stroke={ink} strokeWidth={2} />
      </>
    );
  }
  return <circle cx={x} cy={y} r={1.7} fill={ink} stroke={ground} strokeWidth={0.8} />;
}

/** A ring round nothing: here a reading is wanted. */
export function NextRing({ x, y, theme }: Omit<DotProps, 'suspect'>) {
  const { ink, ground } = paletteOf(theme);
  return (
    <g fill="none">
      <title>Next reading</title>
      <circle cx={x} cy={y} r={7} stroke={ground} strokeWidth={5} />
      <circle cx={x} cy={y} r={7} stroke={ink} strokeWidth={2} strokeDasharray="4 2.6" />
    </g>
  );
}

interface KeepoutProps {
  readonly keepout: MapKeepout;
  readonly frame: MapFrame;
  readonly theme: Theme;
}

function Keepout({ keepout, frame, theme }: KeepoutProps) {
  const { ink, ground } = paletteOf(theme);
  return (
    <g fill={ground} fillOpacity={0.75} stroke={ink} strokeWidth={1.5}>
      <title>{`${keepout.name}: leave alone`}</title>
      {keepout.boxes.map(({ x, y, width, height }) => {
        const [w, h] = [width * frame.scaleX, height * frame.scaleY];
        const [left, top] = [round(x * frame.scaleX), round(y * frame.scaleY)];
        const hole = keepout.kind === 'grease-hole';
        return (
          <rect
            key={x}
            x={left}
            y={top}
            width={round(w)}
            height={round(h)}
            rx={hole ? round(w / 2) : 0}
            ry={hole ? round(h / 2) : 0}
          />
        );
      })}
    </g>
  );
}
