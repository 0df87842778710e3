/** Heat, cold and the clock of one bushing, as the report names them. °C, seconds, mm across; not known is null. */
import * as v from 'valibot';
import type { BushingFit } from '../evaluate/fit.ts';
import { clockWords } from '../figures/clockWords.ts';
import { slipWords } from '../figures/slipWords.ts';
import { Cold } from '../job/heatSchema.ts';
import type { Units } from '../job/schema.ts';
import { degrees, orNull } from './heatReport.ts';

const Num = v.nullable(v.number());
const Words = v.array(v.string());

const RowSchema = v.strictObject({
  cold: Cold,
  /** Of the bushing when it is taken out, and when it touches. */
  taken: v.number(),
  entry: v.number(),
  smaller: v.number(),
  /** Of the boss when they touch and when the heat is taken away; null: no such heat, or it is not told. */
  boss: Num,
  off: Num,
  verdict: v.nullable(v.picklist(['cold', 'heat', 'over'])),
});

const ChosenSchema = v.strictObject({
  cold: Cold,
  entry: v.number(),
  off: v.number(),
  boss: v.number(),
  from: v.picklist(['typed', 'probes', 'usual']),
  /** Room when they touch, on the mean and at least. */
  room: v.number(),
  least: v.number(),
  /** What warmer sides take of it; clock of the warmest side and of the warmer pair, null where it is even. */
  oval: v.strictObject({ least: v.number(), most: v.number() }),
  warmestClock: Num,
  pairClock: Num,
  mixed: Num,
  shorter: Num,
});

const ClockSchema = v.strictObject({
  words: Words,
  /** Seconds from touching until the gap closes. */
  seconds: Num,
  soonest: Num,
  latest: Num,
  needs: v.number(),
  contact: v.strictObject({ usual: v.number(), least: v.number(), most: v.number() }),
  helps: v.array(
    v.strictObject({
      what: v.picklist(['hotter', 'colder', 'sooner']),
      to: v.union([v.number(), Cold]),
      seconds: Num,
    }),
  ),
  /** Room by time. */
  curve: v.array(v.strictObject({ seconds: v.number(), room: v.number() })),
  stuck: v.strictObject({
    cold: v.number(),
    frees: v.number(),
    at: v.number(),
    flameOff: v.number(),
    skin: v.number(),
    free: v.nullable(v.strictObject({ from: v.number(), to: v.number() })),
  }),
});

export const SlipSchema = v.strictObject({
  /** Wrong entries, what must be won, missing sizes. */
  words: Words,
  press: Num,
  room: v.number(),
  /** Both together: what heat and cold must win. */
  mustWin: Num,
  /** What it is counted with: °C of the air, seconds, W/(m² K) to the air, kW and seconds of a flame. */
  given: v.strictObject({
    shop: v.number(),
    carry: v.number(),
    slide: v.number(),
    find: v.number(),
    film: v.number(),
    flame: v.number(),
    flameSeconds: v.number(),
  }),
  limits: v.strictObject({ boss: v.number(), bushing: v.number() }),
  rows: v.array(RowSchema),
  /** Null while a question on heat is open or stops it and the way takes heat. */
  way: v.nullable(
    v.strictObject({
      words: Words,
      chosen: ChosenSchema,
      /** Null where a size is missing, or there is no room. */
      clock: v.nullable(ClockSchema),
    }),
  ),
});
type Slip = v.InferOutput<typeof SlipSchema>;

/** @param open whether steps with heat may be told */
export function slipReport(one: BushingFit, units: Units, open: boolean): Slip {
  const { heat, clock, seated } = one;
  const slip = slipWords(one, units);
  const told = clockWords(clock, heat, seated, units);
  const { press, room, limits, rows, chosen, facts } = heat;
  return {
    words: [...slip.wrong, ...slip.needs, ...told.missing],
    press: orNull(press),
    room,
    mustWin: orNull(press + room),
    given: {
      shop: facts.shop.value,
      carry: facts.carry.value,
      slide: facts.slide.value,
      find: facts.find.value,
      film: facts.film.value,
      flame: facts.flame.value,
      flameSeconds: facts.flameSeconds.value,
    },
    limits,
    rows: rows.map((row) => ({
      cold: row.cold,
      taken: row.taken,
      entry: row.entry,
      smaller: row.smaller,
      boss: open ? orNull(row.boss) : null,
      off: open ? orNull(row.off) : null,
      verdict: open || row.verdict === 'cold' ? row.verdict : null,
    })),
    way:
      chosen === null || slip.chosen.length === 0 || (slip.hot && !open)
        ? null
        : {
            words: [...slip.chosen, ...slip.cautions],
            chosen: chosenReport(heat, chosen),
            clock: clock && clockReport(clock, told, open),
          },
  };
}

function chosenReport(
  { mixed, shorter }: BushingFit['heat'],
  { row, off, boss, from, room, least, oval, uneven }: NonNullable<BushingFit['heat']['chosen']>,
): v.InferOutput<typeof ChosenSchema> {
  return {
    cold: row.cold,
    entry: row.entry,
    off,
    boss,
    from,
    room,
    least,
    oval: { ...oval },
    warmestClock: uneven && degrees(uneven.side.theta),
    pairClock: uneven && degrees(uneven.pair.theta),
    mixed: orNull(mixed),
    shorter: orNull(shorter),
  };
}

function clockReport(
  {
    usual,
    soonest,
    latest,
    needs,
    contact,
    helps,
    recovery,
    cold,
  }: NonNullable<BushingFit['clock']>,
  told: ReturnType<typeof clockWords>,
  open: boolean,
): v.InferOutput<typeof ClockSchema> {
  const { most, at, off, skin, free } = recovery;
  // The flame of the last resort is a step with heat as well.
  const words = [...told.says, ...told.helps, ...(open ? told.stuck : told.stuck.slice(0, 1))];
  return {
    words,
    seconds: orNull(usual.seconds),
    soonest: orNull(soonest.seconds),
    latest: orNull(latest.seconds),
    needs,
    contact,
    helps: helps.map(({ what, to, seconds }) => ({ what, to, seconds: orNull(seconds) })),
    curve: [...usual.curve.seconds].map((seconds, i) => ({
      seconds,
      room: usual.curve.room[i]!,
    })),
    stuck: { cold, frees: most, at, flameOff: off, skin, free },
  };
}
