/** Room between bushing and bore against seconds from touching, as a picture: what is counted, and its give-or-take. */
import { scaleLinear } from 'd3';
import type { Clock } from '../evaluate/fit/clock.ts';
import type { Units } from '../job/schema.ts';
import { timeSaid } from './clockWords.ts';
import { MAP_UNIT, MAP_UNIT_NAME } from './steps.ts';

type Point = readonly [seconds: number, room: number];

export interface GapClock {
  /** Of the axis of time: 1, or 60 where seconds would be many. */
  readonly per: number;
  readonly unitOfTime: string;
  readonly unit: string;
  /** Ends of the axes, in the units above. */
  readonly last: number;
  readonly most: number;
  readonly usual: readonly Point[];
  /** Around it: soonest there, latest back. */
  readonly band: readonly Point[];
  /** When it is to be home. */
  readonly needs: number;
  readonly ticks: { readonly time: readonly number[]; readonly room: readonly number[] };
  readonly words: string;
}

/** A picture longer than this many times the usual tells nothing near its beginning. */
const LONGEST = 4;
const MINUTES_FROM = 300;

export function gapClock(clock: Clock, units: Units): GapClock {
  const { usual, soonest, latest, needs } = clock;
  const ends = [usual.seconds, latest.seconds].filter((one) => one > 0);
  const wanted = Math.max(1.25 * needs, 1.1 * Math.max(...ends, 0));
  const last = Math.min(
    wanted,
    LONGEST * Math.max(needs, usual.seconds > 0 ? usual.seconds : wanted),
  );
  const per = last > MINUTES_FROM ? 60 : 1;
  const of = MAP_UNIT[units];
  const points = ({ curve }: Clock['usual']): Point[] =>
    within([...curve.seconds], [...curve.room], last).map(([t, room]) => [t / per, room / of]);
  const [late, soon] = [points(latest), points(soonest)];
  const most = Math.max(late[0]![1], 1e-6);
  return {
    per,
    unitOfTime: per === 60 ? 'minutes from touching' : 'seconds from touching',
    unit: `${MAP_UNIT_NAME[units]} of room, across`,
    last: last / per,
    most,
    usual: points(usual),
    band: [...late, ...soon.reverse()],
    needs: needs / per,
    ticks: {
      time: scaleLinear([0, last / per], [0, 1]).ticks(5),
      room: scaleLinear([0, most], [0, 1]).ticks(3),
    },
    words: `Room between bushing and bore from the moment they touch: gone after ${timeSaid(usual.seconds)}, ${timeSaid(soonest.seconds)} at the soonest, ${timeSaid(latest.seconds)} at the latest; ${needs} seconds are needed.`,
  };
}

/** To where the room is gone or the picture ends, whichever comes first; the end between two steps, in a straight line. */
function within(seconds: readonly number[], rooms: readonly number[], last: number): Point[] {
  const found: Point[] = [];
  for (const [i, at] of seconds.entries()) {
    const room = rooms[i]!;
    if (i > 0 && (!(room > 0) || at > last)) {
      const [t, before] = [seconds[i - 1]!, rooms[i - 1]!];
      const toNone = room > 0 ? 1 : before / (before - room);
      const toLast = at > last ? (last - t) / (at - t) : 1;
      const share = Math.max(0, Math.min(toNone, toLast));
      found.push([t + share * (at - t), before + share * (room - before)]);
      break;
    }
    found.push([at, Math.max(0, room)]);
  }
  return found;
}
