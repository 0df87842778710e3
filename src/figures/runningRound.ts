/**
 * The pin in the middle of the pressed bushing's bore, seen looking in at face A at the depth where it is tightest: the
 * clearance drawn larger than it is by a round factor, and told at every hour per side.
 */

import type { PinSizes } from '../evaluate/fit/pinOf.ts';
import type { Installed } from '../evaluate/fit/running.ts';
import { clockText } from '../job/clock.ts';
import type { Units } from '../job/schema.ts';
import { formatDepth, inUnits } from '../job/units.ts';
import { exaggerations } from './exaggeration.ts';

export interface RunningRound {
  /** Outline of the bore, in pin radii, x to 3 o'clock and y down; closed. */
  readonly outline: readonly (readonly [number, number])[];
  /** By how much clearance is drawn larger. */
  readonly factor: number;
  /** At each hour the least room over all depths, per side. `tight`: below half of the least wanted. */
  readonly hours: readonly {
    readonly theta: number;
    readonly text: string;
    readonly tight: boolean;
  }[];
  readonly depth: string;
}

/** Per side, mm: less is not written. */
const UNSAID = 0.00127;

export function runningRound(
  { hole, largest, tightest, byClock }: Installed,
  pin: PinSizes,
  least: number,
  units: Units,
): RunningRound {
  const { columns, z, radius } = hole;
  const row = Math.max(0, Array.from(z).indexOf(tightest.z));
  const x = largest.x + largest.leanX * tightest.z;
  const y = largest.y + largest.leanY * tightest.z;
  const size = pin.greatest / 2;
  const rooms = Array.from({ length: columns }, (_, i) => {
    const theta = (2 * Math.PI * i) / columns;
    return {
      theta,
      room: radius[row * columns + i]! - x * Math.sin(theta) - y * Math.cos(theta) - size,
    };
  }).filter(({ room }) => Number.isFinite(room));
  const [low, high] = [
    Math.min(0, ...rooms.map(({ room }) => room)),
    Math.max(...rooms.map(({ room }) => room)),
  ];
  const { chosen } = exaggerations(low, high, size, size);
  return {
    outline: rooms.map(({ theta, room }) => {
      const r = 1 + (chosen * room) / size;
      return [r * Math.sin(theta), -r * Math.cos(theta)] as const;
    }),
    factor: chosen,
    hours: byClock.map((one) => ({
      theta: one.theta,
      text: roomText(one.least, units),
      tight: one.least < least / 2 - UNSAID,
    })),
    depth: formatDepth(tightest.z, units),
  };
}

/** Without the unit: thou, or hundredths of a millimetre. */
function roomText(mm: number, units: Units): string {
  return (units === 'in' ? 1000 * inUnits(mm, units) : 100 * mm).toFixed(1).replace('-', '−');
}

export const ROOM_UNIT: Readonly<Record<Units, string>> = { in: 'thou', mm: '0.01 mm' };

/** What the picture shows, in words. */
export function describeRound({ hours, factor, depth }: RunningRound, units: Units): string {
  const told = hours.map(({ theta, text }) => `${clockText(theta)} ${text}`).join(', ');
  return (
    `The pin in the middle of the bushing’s bore, seen looking in at face A, ${depth} deep, clearance drawn ${factor} times ` +
    `as large. Least room over all depths, ${ROOM_UNIT[units]} per side, by the clock: ${told}.`
  );
}
