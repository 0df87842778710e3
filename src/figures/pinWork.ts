/** A pin's ways in words, what to guard, and the steps and cautions of welding and turning it. */
import type { PinReason, PinWayName } from '../bore/pinWays.ts';
import type { PinPlan } from '../evaluate/pinTypes.ts';
import type { Feature, Units } from '../job/schema.ts';
import { formatAcross, formatDepth, formatPerSide, lengthMm } from '../job/units.ts';
import { earned } from './amountWords.ts';
import { KEEPOUT_NAMES } from './place.ts';
import { grams, orderWords, preheatWords } from './weldWords.ts';

const PIN_WAYS: Readonly<Record<PinWayName, string>> = {
  leave: 'Use it as it is',
  'turn-round': 'Turn it round in its holes',
  'turn-down': 'Turn it down, bush it smaller',
  spray: 'Spray metal on, grind to size',
  weld: 'Weld it up and turn it',
  replace: 'Make or buy a new one',
};

/** What is advised and why, as one sentence or two; null once it is welded up. */
export function pinAdvised(plan: PinPlan, units: Units): string | null {
  const { advice } = plan;
  if (advice === null) return null;
  const why = pinReason(advice.reason, plan, units);
  return advice.way === null ? why : `Advised: ${PIN_WAYS[advice.way].toLowerCase()}. ${why}`;
}

/** Why a way is advised. Each is a rule; the first that holds counts. */
function pinReason(reason: PinReason, { pin, clearance }: PinPlan, units: Units): string {
  const low = formatPerSide(pin.acceptLow, units);
  const loose = formatAcross(3 * clearance, units);
  const said: Readonly<Record<PinReason, string>> = {
    crack: 'A crack was seen: a cracked pin is not mended, it is replaced.',
    'good-enough': `No place is short by more than ${low}, and its play stays within ${loose}, three times the clearance.`,
    'other-side': `Turned round, no place under load is short by more than ${low}, and its play stays within ${loose}, three times the clearance.`,
    skin: 'Its skin is hardened or plated: welding ruins that and cracks, turning cuts through it. A new pin keeps its skin.',
    'skin-unknown':
      'Say first what its skin is: a file tells. Where it skates, the pin is hardened; a bright hard layer that flakes at the edge of the wear is plating.',
    'little-to-turn': `It cleans up with no more than ${formatAcross(pin.turnDownMost, units)} turned off its size: cheaper than weld, where a bushing with a smaller hole can be had.`,
    weldable: `More than ${formatAcross(pin.turnDownMost, units)} would have to be turned off, and the steel takes weld as far as you have said.`,
    'not-weldable':
      'It is not to be welded as answered below, and too much would have to be turned off.',
  };
  return said[reason];
}

export interface PinWayRow {
  readonly name: PinWayName;
  readonly title: string;
  readonly advised: boolean;
  readonly figures: readonly string[];
  readonly cautions: readonly string[];
}

export function pinWayRows(plan: PinPlan, units: Units): PinWayRow[] {
  return plan.ways.map((way) => ({
    name: way.name,
    title: PIN_WAYS[way.name],
    advised: plan.advice?.way === way.name,
    figures: figuresOf(plan, way, units),
    cautions: CAUTIONS[way.name],
  }));
}

function figuresOf(plan: PinPlan, way: PinPlan['ways'][number], units: Units): string[] {
  const play = `play ${formatAcross(way.play, units)} in a new hole`;
  const strong = `${Math.round(100 * way.strength)} % of the bending strength at the finished size`;
  switch (way.name) {
    case 'leave':
      return [
        `smallest ${formatAcross(way.size, units)}`,
        `${formatPerSide(way.short, units)} short at worst`,
        play,
      ];
    case 'turn-round':
      return [roundWords(plan, units), `${play}: that does not change`];
    case 'turn-down':
      if (!way.possible) return ['no round of any size cleans up'];
      return [
        `${formatAcross(way.size, units)}, ${plan.pin.smaller > 0 ? 'as you said' : 'sure to clean up'}; off its size ${formatAcross(plan.finished.mm - way.size, units)}`,
        `bushing hole ${formatAcross(way.size + plan.clearance, units)}`,
        `${grams(way.massOff)} off, ${strong}`,
      ];
    case 'spray':
      return sprayWords(plan, way, units);
    case 'weld':
      return [
        `${grams(way.massOn)} on, ${grams(way.massOff)} off again`,
        `finished ${formatAcross(way.size, units)}, ${play}`,
      ];
    case 'replace':
      return [
        `${formatAcross(way.size, units)}, ${formatDepth(plan.length, units)} long, about ${grams(way.massOn)} of bar`,
        play,
      ];
  }
}

/** Never advised: whether a joint is free of shock nobody can say from its readings. */
function sprayWords(
  { finished, spray }: PinPlan,
  { possible, core, coat, volumeOn, massOff, strength }: PinPlan['ways'][number],
  units: Units,
): string[] {
  if (!possible) {
    return [
      coat > spray.most
        ? `it would be ${formatPerSide(coat, units, 3)} thick; ${formatPerSide(spray.most, units, 3)} is the most that is taken here`
        : 'a running stretch goes out over an end of the pin: sprayed metal chips there, it needs a shoulder at both ends',
    ];
  }
  return [
    `all round turned to ${formatAcross(core, units)} first, ${formatPerSide(coat, units, 3)} under the finished size; sprayed to ${formatPerSide(spray.finish, units, 3)} above it and ground to ${formatAcross(finished.mm, units)}`,
    `${earned(volumeOn, -1)} mm³ on, ${grams(massOff)} off in all`,
    `${Math.round(100 * strength)} % of the bending strength at the finished size, since sprayed metal adds none`,
    'never advised here: it is for a joint that you know runs without shock',
  ];
}

function roundWords({ turned }: PinPlan, units: Units): string {
  const told = (mm: number) => `${formatPerSide(Math.max(0, mm), units)} short under the load`;
  const half = Number.isNaN(turned.opposite)
    ? 'half a turn: not told, the readings do not show which side is worn'
    : `half a turn: ${told(turned.opposite)}`;
  return `${half}; end for end: ${told(turned.ended)}`;
}

/** Usual cautions, for the way where they matter; common practice. */
const CAUTIONS: Readonly<Record<PinWayName, readonly string[]>> = {
  leave: ['A loose joint hammers itself looser. Look again after 10 to 50 hours of work.'],
  'turn-round': [
    'Only where keeper, flats and grease holes allow it. A stop-gap: the play stays.',
    'Press or draw it out; never hammer on hard steel.',
  ],
  'turn-down': [
    'Ends that stay thicker must still go through the smaller holes: check the way it goes in.',
    'A thinner pin is weaker and a hard skin is cut through: the maker’s least size comes first.',
    'No gloves or loose sleeves at the lathe; eyes covered; centres sound and greased.',
  ],
  spray: [
    'It grips by roughness alone, and flakes where a pin is hammered, rocks hard under load or bears on an edge, a corner or a line. Not for threads, splines or keyways.',
    'The pocket goes well past the wear and ends in slopes of 45 degrees, not square; it is roughened, free of oil, never touched by hand, and sprayed at once. The data sheet of the metal that is sprayed comes first.',
    'Flame or arc, fine metal dust that burns, and fumes: a shop with hood, exhaust and air to breathe; closed pockets and grease passages vented first. Nothing is struck before the questions about heat are answered.',
    'Grind it wet and lightly: heat and a dull tool tear it off.',
  ],
  weld: [
    'Fire, fumes, closed pockets: nothing is struck before the questions about heat are answered.',
    'A weld across a pin that bends is where it breaks. Ask the maker before a pin that lifts is welded.',
  ],
  replace: [
    'Ask for its hardness and steel as well as its size; the old one shows the length and the holes.',
  ],
};

/** One thing to be covered, plugged or left alone, with what it is told by. */
export interface Guarded {
  readonly id: string;
  readonly what: string;
  readonly how: string;
  readonly done: boolean;
}

type Keepout = Feature['keepouts'][number];

const HOW: Readonly<Record<Keepout['kind'], string>> = {
  'grease-hole':
    'clear of grease and open; a carbon or copper plug in it while it is welded, drilled clean afterwards',
  groove: 'keep weld and grinding out of it',
  chamfer: 'leave the edge as it is',
  thread: 'a nut or a sleeve over it, wrapped against spatter; no clamp of the welding lead on it',
  face: 'cover it against spatter and arc strikes; no clamp of the welding lead on it',
  other: 'leave it alone',
};

/** The job's list of what to guard, in its order. */
export function guardList(keepouts: readonly Keepout[], units: Units): Guarded[] {
  return keepouts.map(({ id, kind, name, face, from, to, clock, guarded = false }) => {
    const ends = [from, to].map((typed) => formatDepth(lengthMm(typed), units));
    const place = Number.isNaN(lengthMm(from))
      ? 'place not given'
      : `${ends[0]} to ${ends[1]} from face ${face}`;
    const around = clock === undefined ? '' : `, at ${clock}`;
    return {
      id,
      what: `${name ?? KEEPOUT_NAMES[kind]}, ${place}${around}`,
      how: HOW[kind],
      done: guarded,
    };
  });
}

const SKIN: Readonly<Record<'hardened' | 'plated' | 'unknown', string>> = {
  hardened:
    'It is hardened: weld cracks a hard skin and softens it. Only a shop with the steel’s data and the heat treatment for it should weld this one.',
  plated:
    'It is plated: heated chromium, zinc and cadmium give off poison. The plating comes off first, at a shop that strips it with the ventilation for it; never grind or weld it here.',
  unknown: 'Nobody has said what its skin is: try a file and look for plating before any heat.',
};

export function skinCaution({ pin: { skin } }: PinPlan): string | null {
  return skin === 'plain' ? null : SKIN[skin ?? 'unknown'];
}

/** Steps with heat, in order; common practice. Shown behind the questions about heat alone. */
export function pinSteps({ stage, order, preheat, equivalent, facts }: PinPlan): string[] {
  return [
    'Look for cracks first, and wash every trace of grease out of the cross holes and passages: a plugged passage is a closed pocket, and bursts. Open both ends of a hollow pin to the air.',
    stage === 'built-up'
      ? 'Grind the places that are low to clean bright metal, no deeper than that, with sloped edges; leave the weld alone that stands high enough.'
      : 'Turn or grind the worn stretches to clean bright metal, with the ends of the cut sloped, not square.',
    preheatWords(preheat, equivalent, facts.weld.steel.known),
    `Stringers along the pin, skipping round the clock so that it stays straight: ${orderWords(order)}, seen from face A. Stagger the starts; each restart laps the bead before by a bead’s width, never in a crater. Run off over the edges and corners, for these come out low.`,
    'Clamp the welding lead on the pin beside the weld, never so that the current goes through a bearing. Clean every bead to bright metal.',
    'Let it cool slowly under a blanket, never in water or wind, then look for cracks cold and again after 24 to 48 hours.',
    'Measure it cold, all round, in the middle and at both edges of every stretch, before it goes to the lathe: what is low is found here, and not at the last cut.',
  ];
}

export const TURNING_CAUTIONS: readonly string[] = [
  'A welded pin is seldom straight: check it between centres before the first cut. Weld is hard in places; light cuts, sound centres, guards on.',
  'Stop above the finished size and let it cool: a warm pin measures large, and metal cannot be put back.',
];
