/** How freely a pin runs in the pressed bushing, as the report names it: across unless it says per side; mm, degrees. */
import * as v from 'valibot';
import type { RunningPart } from '../evaluate/fit/running.ts';
import { CLEARANCES } from '../figures/clearanceTable.ts';
import { runningWords } from '../figures/runningWords.ts';
import type { Units } from '../job/schema.ts';
import { degrees } from './fitRoundReport.ts';
import { orNull } from './heatReport.ts';

const Num = v.nullable(v.number());
const Across = v.strictObject({ across: v.number(), clock: v.number(), depth: v.number() });
const Limit = v.strictObject({ mm: Num, from: v.picklist(['typed', 'default', 'missing']) });

export const RunningSchema = v.strictObject({
  words: v.array(v.string()),
  pin: v.nullable(
    v.strictObject({
      /** Surveyed, or a list of sizes: of this bore, or the only one of the job at another bore. */
      from: v.picklist(['surveyed', 'list', 'other-list']),
      /** The pin's name, or that of the bore that has the list. */
      name: v.string(),
      least: v.number(),
      mean: v.number(),
      greatest: v.number(),
      giveOrTake: v.number(),
    }),
  ),
  limits: v.strictObject({ least: Limit, mostWhenNew: Limit, wornOut: Limit }),
  /** By class of machine, when new; a guide where its maker says nothing. */
  published: v.array(
    v.strictObject({
      of: v.string(),
      from: v.picklist(['published', 'practice']),
      least: v.number(),
      most: v.number(),
      wornOut: Num,
    }),
  ),
  /** Before the bushing goes in. */
  free: v.nullable(v.strictObject({ tightest: v.number(), loosest: v.number() })),
  /** The tightest were all of the press fit to close the bushing's bore. */
  safe: Num,
  /** Null: nobody has read the bushing's bore since it went in; else `installed` comes from those readings. */
  measured: v.nullable(
    v.strictObject({
      survey: v.string(),
      /** What was worked out before, across. */
      computed: v.nullable(
        v.strictObject({
          tightest: Across,
          loosest: Across,
          mean: v.number(),
          giveOrTake: v.number(),
        }),
      ),
      /** How much smaller the mean of the bushing's bore is than before: as read, and as worked out. */
      closedIn: Num,
      closesIn: Num,
    }),
  ),
  installed: v.nullable(
    v.strictObject({
      verdict: v.picklist(['stuck', 'tight', 'near', 'good', 'wide', 'worn']),
      tightest: Across,
      loosest: Across,
      mean: v.number(),
      giveOrTake: v.number(),
      /** What the tightest is short of the least wanted; below 0 it is more. */
      short: v.number(),
      /** The largest straight pin that goes through, and the room that it leaves for this one. */
      largestPin: v.number(),
      room: v.number(),
      /** Per side, at each hour, the pin in the middle: least and greatest over the depth. */
      byClock: v.array(
        v.strictObject({ clock: v.number(), least: v.number(), greatest: v.number() }),
      ),
      /** Null: it need not be opened. `most` is per side. */
      open: v.nullable(
        v.strictObject({
          to: v.number(),
          places: v.array(
            v.strictObject({
              clock: v.number(),
              most: v.number(),
              from: v.number(),
              to: v.number(),
            }),
          ),
        }),
      ),
    }),
  ),
});
type RunningReport = v.InferOutput<typeof RunningSchema>;

export function runningReport(part: RunningPart, units: Units): RunningReport {
  const { pin, limits, free, safe, installed, measured } = part;
  const limit = ({ mm, from }: RunningPart['limits']['least']) => ({ mm: orNull(mm), from });
  const { said, open } = runningWords(part, units);
  return {
    words: [...said, ...open],
    pin: pin && {
      from: pin.from,
      name: pin.name,
      least: pin.least,
      mean: pin.mean,
      greatest: pin.greatest,
      giveOrTake: pin.give,
    },
    limits: {
      least: limit(limits.least),
      mostWhenNew: limit(limits.most),
      wornOut: limit(limits.worn),
    },
    published: CLEARANCES.map(({ of, from, least, most, worn }) => ({
      of,
      from,
      least,
      most,
      wornOut: orNull(worn),
    })),
    free,
    safe: orNull(safe),
    measured: measured && {
      survey: measured.survey,
      computed: measured.computed && {
        tightest: acrossOf(measured.computed.tightest),
        loosest: acrossOf(measured.computed.loosest),
        mean: measured.computed.mean,
        giveOrTake: measured.computed.give,
      },
      closedIn: orNull(measured.closedIn),
      closesIn: orNull(measured.closesIn),
    },
    installed: installed && installedReport(installed),
  };
}

function installedReport(
  found: NonNullable<RunningPart['installed']>,
): NonNullable<RunningReport['installed']> {
  const { verdict, short, tightest, loosest, mean, give, largest, room, byClock, open } = found;
  return {
    verdict,
    tightest: acrossOf(tightest),
    loosest: acrossOf(loosest),
    mean,
    giveOrTake: give,
    short,
    largestPin: largest.diameter,
    room,
    byClock: byClock.map(({ theta, least, greatest }) => ({
      clock: degrees(theta),
      least,
      greatest,
    })),
    open: open && {
      to: open.to,
      places: open.hours.map(({ theta, most, from, to }) => ({
        clock: degrees(theta),
        most,
        from,
        to,
      })),
    },
  };
}

function acrossOf({
  mm,
  theta,
  z,
}: NonNullable<RunningPart['installed']>['tightest']): v.InferOutput<typeof Across> {
  return { across: mm, clock: degrees(theta), depth: z };
}
