/** What speaks against the way that was chosen for slipping a bushing in: the same sentences wherever that way is told. */
import type { Heat } from '../evaluate/fit/heat.ts';
import type { Units } from '../job/schema.ts';
import { degrees } from './degrees.ts';
import { written } from './written.ts';

/** Less than this is not written with the digits of a shop, mm. */
export const UNSEEN = 1.3e-3;
/** Degrees are written whole, °C. */
const HALF = 0.5;

/** One sentence each; null: nothing of the kind. */
export interface SlipAgainst {
  /** Boss or bushing past what it may have. */
  readonly boss: string | null;
  readonly bushing: string | null;
  /** No room when they touch, or less than is wanted. */
  readonly room: string | null;
}

/** All null where no way is chosen. */
export function slipAgainst(heat: Heat, units: Units): SlipAgainst {
  const { chosen, limits } = heat;
  if (chosen === null) return { boss: null, bushing: null, room: null };
  return {
    boss:
      chosen.off > limits.boss + HALF
        ? `Too hot: this boss (${heat.boss.name}) may have ${degrees(limits.boss, units)}, and no more.`
        : null,
    bushing: bushingWords(heat, chosen.row.taken, units),
    room: roomWords(heat, chosen.least, units),
  };
}

function bushingWords({ mixed, limits }: Heat, taken: number, units: Units): string | null {
  const may = `more than the ${degrees(limits.bushing, units)} that it may have`;
  if (taken > limits.bushing + HALF) {
    return `Too hot: the bushing is at ${degrees(taken, units)}, ${may}.`;
  }
  return mixed > limits.bushing
    ? `Once both have evened out the bushing is at about ${degrees(mixed, units)}, ${may}: use more cold and less heat.`
    : null;
}

function roomWords({ room }: Heat, least: number, units: Units): string | null {
  if (!(least > 0)) {
    return 'It does not go in like this: more heat or more cold, before anybody pushes.';
  }
  return least < room - UNSEEN
    ? `That is ${written(units, Number.NaN).across(room - least)} less than the room wanted: it may catch on the way.`
    : null;
}

/** The gravest of them; null: nothing speaks against it. */
export function gravest({ boss, bushing, room }: SlipAgainst): string | null {
  return boss ?? bushing ?? room;
}
