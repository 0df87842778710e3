/** Where a key takes the cursor on the map. */
import { middleOf } from '../../figures/bend.ts';
import { turned } from '../../figures/sample.ts';
import type { Place } from '../../store/session.ts';

interface Wall {
  readonly cut: number;
  /** Depth of the wall, mm. */
  readonly height: number;
}

const HOUR = Math.PI / 6;
/** Ten minutes of the clock, and a fortieth of the depth. */
const FINE = { round: HOUR / 6, along: 1 / 40 } as const;
const COARSE = { round: HOUR, along: 1 / 8 } as const;

/**
 * @param from null: no cursor yet, and the first key puts it on the rim in the middle of the map
 * @returns the new place, null for none, undefined where the key means nothing here
 */
export function moved(
  from: Place | null,
  key: string,
  coarse: boolean,
  wall: Wall,
): Place | null | undefined {
  const step = coarse ? COARSE : FINE;
  const ways: Readonly<Record<string, readonly [number, number]>> = {
    ArrowLeft: [-step.round, 0],
    ArrowRight: [step.round, 0],
    ArrowUp: [0, -step.along * wall.height],
    ArrowDown: [0, step.along * wall.height],
    Home: [0, Number.NEGATIVE_INFINITY],
    End: [0, Number.POSITIVE_INFINITY],
  };
  if (key === 'Escape') return null;
  const way = ways[key];
  if (way === undefined) return undefined;
  if (from === null) return { theta: middleOf(wall.cut), z: 0 };
  return {
    theta: turned(from.theta + way[0]),
    z: Math.min(wall.height, Math.max(0, from.z + way[1])),
  };
}
