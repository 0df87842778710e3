/** Several bores on one pin, in words: the largest straight pin, whether the given one passes, and who stands off the line. */
import type { OnePin, PinHole } from '../evaluate/onePin.ts';
import type { Units } from '../job/schema.ts';
import { formatAcross, formatDepth, formatPerSide } from '../job/units.ts';
import { nearClock } from './nearClock.ts';

/** Feelers and sizes of single bores tell no more: 0.0005 in, 0.01 mm. */
const digits = (units: Units) => (units === 'in' ? 4 : 2);

/** What cannot be counted, and what is only taken so; empty where all is said. */
export function onePinMissing({ holes, leftOut, faults }: OnePin): string[] {
  const ends = (text: string) => `${text}.`;
  return [
    ...leftOut.map(
      ({ name, why }) => `${name} is not counted: ${why}. With it the answer follows.`,
    ),
    ...faults.map(ends),
    ...unplaced(holes),
    ...holes
      .filter(({ placed }) => placed.from === 'bar' && !placed.leanKnown)
      .map(({ name }) => `${name} was read at one face: it is taken to lie along the bar.`),
  ];
}

/** Where some places are stated, a bore without one is the line that they are counted from. */
function unplaced(holes: readonly PinHole[]): string[] {
  const known = (from: PinHole['placed']['from']) =>
    holes.some(({ placed }) => placed.from === from);
  if (known('stated') && !known('bar')) return [];
  const open = holes.filter(({ placed }) => placed.from !== 'bar');
  if (known('bar')) {
    return open.map(
      ({ name }) =>
        `${name} was not read from the bar: it is taken where the job states it, or on the bar’s line. Read it as well.`,
    );
  }
  return open.length === 0
    ? []
    : [
        'Nothing says how these bores stand beside each other: they are taken to stand on one line. Read them from a straight bar.',
      ];
}

/** The largest straight pin, and whether the job's goes through. */
export function onePinWords(found: OnePin, units: Units): string[] {
  const { largest, pin, holes, contacts } = found;
  const across = (mm: number) => formatAcross(mm, units, digits(units));
  if (Number.isNaN(largest)) {
    return holes.length < 2
      ? ['The largest straight pin needs two bores that can be counted.']
      : ['No straight pin goes through all of these bores: check how they stand to each other.'];
  }
  const names = [...new Set(contacts.map(({ name }) => name))];
  const held =
    names.length > 1
      ? `It is held by ${listed([...new Set(contacts.map((one) => contactWords(one, units)))])}.`
      : `${names[0]} alone holds it, and the others let more through.`;
  return [
    `The largest straight pin that passes through all of them: ${across(largest)}.`,
    held,
    ...givenWords(largest, pin, holes, units),
  ];
}

function contactWords({ name, theta, z }: OnePin['contacts'][number], units: Units): string {
  return `${name} at ${nearClock(theta)}, ${formatDepth(Math.abs(z), units)} deep`;
}

function givenWords(
  largest: number,
  pin: number,
  holes: readonly PinHole[],
  units: Units,
): string[] {
  const side = (mm: number) => formatPerSide(mm, units, digits(units));
  const across = (mm: number) => formatAcross(mm, units, digits(units));
  if (Number.isNaN(pin))
    return ['The pin’s size is not given: with it, it is said whether it passes.'];
  const room = largest - pin;
  if (room > 0)
    return [
      `The pin measures ${across(pin)} at its thickest and passes with ${across(room)} of room.`,
    ];
  const tight = holes.filter(({ bites }) => bites > 0);
  return [
    `The pin measures ${across(pin)} at its thickest and does not pass: it is ${across(-room)} too thick for the line of these bores.`,
    ...(tight.length === 0
      ? []
      : [
          `Lying as the largest pin would, it would bite ${listed(tight.map(({ name, bites, nearest }) => `${side(bites)} into ${name} at ${nearClock(nearest.theta)}`))}. Open it there and not all round, or bring the bores to one line; do not turn the pin down.`,
        ]),
  ];
}

/** How each bore stands to the line of the others, one sentence a bore. */
export function offLineWords({ holes, clearance }: OnePin, units: Units): string[] {
  const side = (mm: number) => formatPerSide(mm, units, digits(units));
  const told = holes.flatMap(({ name, off }) => {
    if (off === null) return [];
    if (!(off.perSide >= 0.005)) return [`${name} stands on the line of the ${othersOf(holes)}.`];
    const verdict =
      off.over === null
        ? ''
        : off.over
          ? ', more than half of the running clearance: off the line'
          : ', within half of the running clearance';
    return [
      `${name} stands ${side(off.perSide)} off the line of the ${othersOf(holes)}, towards ${nearClock(off.theta)} at face ${off.face}${verdict}.`,
    ];
  });
  const over = holes.some(({ off }) => off?.over === true);
  const limit = clearance >= 0 ? [`Half of the running clearance is ${side(clearance / 2)}.`] : [];
  return [
    ...told,
    ...limit,
    ...(over
      ? [
          'Bores that are each round bind the pin together where they stand off one line: line-bore them, or weld in new bosses held on a dummy pin through all.',
        ]
      : []),
  ];
}

const othersOf = (holes: readonly PinHole[]) => (holes.length > 2 ? 'others' : 'other');

/** What of each bore was asked, for those who check. */
export function throughWords({ holes }: OnePin, units: Units): string[] {
  return holes.map((one) => {
    const size = formatAcross(one.alone, units, digits(units));
    return one.by === null
      ? `${one.name}: its bare wall as last measured, which lets ${size} through by itself.`
      : `${one.name}: the inside of its bushing, ${closing(one, units)}: it lets ${size} through by itself.`;
  });
}

/** How the bushing's bore closes in, and how that is known. */
function closing({ by, closesIn }: PinHole, units: Units): string {
  const amount = formatAcross(closesIn, units, digits(units));
  switch (by) {
    case null:
      return '';
    case 'measured':
      return 'as it was read once it was in';
    case 'shape':
      return `in the shape that it takes when it is pressed in, ${amount} smaller on average`;
    case 'formula':
      return `less ${amount} that it closes in by the formula for round rings, as its shape cannot be worked out here`;
    case 'whole':
      return `less ${amount} that it may close in (all of the press fit, which is safe), as sizes of bushing or boss are missing for more`;
  }
}

function listed(parts: readonly string[]): string {
  return parts.length < 2
    ? (parts[0] ?? '')
    : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}
