/** Several bores on one pin, as the report names it, of the whole job. Lengths in mm, clocks in degrees; not known is null. */
import * as v from 'valibot';
import type { OnePin } from '../evaluate/onePin.ts';
import { offLineWords, onePinMissing, onePinWords, throughWords } from '../figures/onePinWords.ts';
import type { Units } from '../job/schema.ts';
import { orNull } from './heatReport.ts';
import { list, underlined } from './textLayout.ts';

const Num = v.nullable(v.number());

export const OnePinSchema = v.strictObject({
  /** Across: the largest straight pin that passes through all; the greatest diameter of the job's pin. */
  largest: Num,
  pin: Num,
  /** What is left for the pin, across; below 0 it does not pass. */
  room: Num,
  /** Running clearance, across: a bore farther off the line than half of it is called off. */
  clearance: Num,
  halfClearance: Num,
  contacts: v.array(v.strictObject({ name: v.string(), clock: Num, depth: Num })),
  bores: v.array(
    v.strictObject({
      name: v.string(),
      /** What the pin meets. */
      through: v.picklist(['bushing', 'wall']),
      /** Across, mean. */
      closesIn: Num,
      /** As read once in, by its shape once pressed, by the formula for round rings, or all of the press fit; null: a bare wall. */
      closesInBy: v.nullable(v.picklist(['measured', 'shape', 'formula', 'whole'])),
      alone: Num,
      placedFrom: v.picklist(['bar', 'stated', 'on-line']),
      station: v.number(),
      /** Of the axis that its readings are counted from, at face A, and lean in mm a mm. */
      center: v.tuple([v.number(), v.number()]),
      lean: v.tuple([v.number(), v.number()]),
      /** Per side, from the line of the others. */
      off: v.nullable(
        v.strictObject({
          perSide: v.number(),
          clock: Num,
          face: v.picklist(['A', 'B']),
          over: v.nullable(v.boolean()),
        }),
      ),
      /** Per side: air left beside the largest pin, and how far the job's pin would bite. */
      air: Num,
      bites: Num,
      clock: Num,
      depth: Num,
    }),
  ),
  leftOut: v.array(v.strictObject({ name: v.string(), why: v.string() })),
  words: v.array(v.string()),
});
type OnePinReport = v.InferOutput<typeof OnePinSchema>;

/** Works it out for the whole job; null where it has but one bore. */
export type FindOnePin = () => OnePin | null;

export function onePinReport(found: OnePin | null, units: Units): OnePinReport | null {
  if (found === null) return null;
  const { largest, pin, clearance, contacts, holes, leftOut } = found;
  return {
    largest: orNull(largest),
    pin: orNull(pin),
    room: orNull(largest - pin),
    clearance: orNull(clearance),
    halfClearance: orNull(clearance / 2),
    contacts: contacts.map(({ name, theta, z }) => ({ name, clock: degrees(theta), depth: z })),
    bores: holes.map(boreReport),
    leftOut: leftOut.map((one) => ({ ...one })),
    words: onePinLines(found, units),
  };
}

function boreReport(one: OnePin['holes'][number]): OnePinReport['bores'][number] {
  const { name, through, closesIn, by, alone, placed, off, nearest, bites } = one;
  return {
    name,
    through,
    closesIn: orNull(closesIn),
    closesInBy: by,
    alone: orNull(alone),
    placedFrom: placed.from,
    station: placed.station,
    center: [placed.x, placed.y],
    lean: [placed.leanX, placed.leanY],
    off: off && {
      perSide: off.perSide,
      clock: degrees(off.theta),
      face: off.face,
      over: off.over,
    },
    air: orNull(nearest.air),
    bites: orNull(bites),
    clock: degrees(nearest.theta),
    depth: orNull(nearest.z),
  };
}

function degrees(theta: number): number | null {
  return orNull((theta * 180) / Math.PI);
}

function onePinLines(found: OnePin, units: Units): string[] {
  return [
    ...onePinWords(found, units),
    ...offLineWords(found, units),
    ...throughWords(found, units),
    ...onePinMissing(found),
  ];
}

/** For people; '' of a job with a single bore. */
export function onePinText(found: OnePin | null, units: Units): string {
  if (found === null) return '';
  return [underlined('Several bores on one pin'), list(onePinLines(found, units))].join('\n\n');
}
