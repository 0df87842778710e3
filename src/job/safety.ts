/**
 * What must be known before any flame or weld. The questions and cautions are in our own words from common
 * practice and public accident reports (sealed cavities that burst when heated); they take the place of no local
 * code, no machine maker's rule and no licensed practice, and say so.
 */
import type { Safety } from './schema.ts';

export type Question = 'openAndClean' | 'sealsAndPlatingOut' | 'metal' | 'carriesPeople';

export interface SafetyQuestion {
  readonly question: Question;
  readonly asks: string;
  /** Why it is asked. */
  readonly because: string;
  readonly answers: readonly { readonly value: string; readonly says: string }[];
}

const YES_NO = [
  { value: 'yes', says: 'Yes' },
  { value: 'no', says: 'No' },
  { value: 'unknown', says: "Don't know" },
] as const;

/** The four questions, in the order in which they are asked. */
export const SAFETY_QUESTIONS: readonly SafetyQuestion[] = [
  {
    question: 'openAndClean',
    asks: 'Is it drained, cleaned and open to the air, with nothing closed, oily or greasy behind the bore?',
    because:
      'A closed pocket of oil, grease, water or air can burst when it is heated. It has killed people.',
    answers: YES_NO,
  },
  {
    question: 'sealsAndPlatingOut',
    asks: 'Are seals, plastics and hoses out of the heat, and any plating, galvanising or paint off?',
    because: 'Seals burn, and zinc, cadmium and some paints give off poison when heated.',
    answers: YES_NO,
  },
  {
    question: 'metal',
    asks: 'What metal is it?',
    because:
      'Iron cracks, and an alloy that was heat-treated can be spoiled by heat that plain steel bears.',
    answers: [
      { value: 'plain-steel', says: 'Plain steel' },
      { value: 'known-alloy', says: 'An alloy steel, and I know which' },
      { value: 'iron', says: 'Cast iron' },
      { value: 'unknown', says: "Don't know" },
    ],
  },
  {
    question: 'carriesPeople',
    asks: 'Does it carry, lift or hold up people, or go on the road?',
    because: 'A part that people hang on is signed for by somebody who is qualified to.',
    answers: YES_NO,
  },
];

export interface Stop {
  readonly question: Question;
  readonly says: string;
  /** Who can settle it. */
  readonly whom: string;
}

export interface HotWork {
  /** True only where every question is answered and nothing stops. */
  readonly open: boolean;
  readonly stops: readonly Stop[];
  /** Questions without an answer yet. */
  readonly asks: readonly string[];
  /** Who signed for a part that carries people; null where nobody has, or nobody needs to. */
  readonly signOff: string | null;
}

const SHOP = 'whoever took the machine apart, or the maker of the machine';
const FOUNDRY = 'the maker of the machine, or a welding shop that can test the metal';
const QUALIFIED = 'a qualified welding inspector or structural engineer where you are';

/** Whether steps with flame or weld may be shown, and what stands in the way. */
export function hotWork(safety: Safety): HotWork {
  const stops = [openStop(safety), sealsStop(safety), metalStop(safety), peopleStop(safety)].filter(
    (stop) => stop !== null,
  );
  const asks = SAFETY_QUESTIONS.filter(({ question }) => safety[question] === undefined).map(
    ({ asks }) => asks,
  );
  const signed = safety.signedOffBy?.trim() ?? '';
  return {
    open: stops.length === 0 && asks.length === 0,
    stops,
    asks,
    signOff: safety.carriesPeople === 'yes' && signed !== '' ? signed : null,
  };
}

function openStop({ openAndClean }: Safety): Stop | null {
  const question = 'openAndClean';
  if (openAndClean === 'no') {
    return {
      question,
      says: 'Stop: drain it, clean it and open every closed pocket to the air before any heat.',
      whom: SHOP,
    };
  }
  if (openAndClean !== 'unknown') return null;
  return {
    question,
    says: 'Stop: find out first whether anything closed, oily or greasy lies behind the bore.',
    whom: SHOP,
  };
}

function sealsStop({ sealsAndPlatingOut }: Safety): Stop | null {
  const question = 'sealsAndPlatingOut';
  if (sealsAndPlatingOut === 'no') {
    return {
      question,
      says: 'Stop: take seals, plastics and hoses out, and plating, galvanising and paint off, before any heat.',
      whom: 'a shop that strips coatings with the ventilation for it',
    };
  }
  if (sealsAndPlatingOut !== 'unknown') return null;
  return {
    question,
    says: 'Stop: find out first what seals and what coating it has.',
    whom: 'the maker of the machine, or a shop that strips coatings',
  };
}

function metalStop({ metal }: Safety): Stop | null {
  const question = 'metal';
  if (metal === 'iron') {
    return {
      question,
      says: 'Stop: cast iron is never squeezed with heat, and cracks when it is welded like steel.',
      whom: 'a shop that repairs castings',
    };
  }
  if (metal !== 'unknown') return null;
  return {
    question,
    says: 'Stop: no heat into a metal that is not known. Spark, file and chip tell iron from steel.',
    whom: FOUNDRY,
  };
}

function peopleStop({ carriesPeople, signedOffBy }: Safety): Stop | null {
  const question = 'carriesPeople';
  if (carriesPeople === 'unknown') {
    return {
      question,
      says: 'Stop: find out first whether people ride on it, hang on it or stand under it.',
      whom: 'the owner, and the maker of the machine',
    };
  }
  if (carriesPeople !== 'yes' || (signedOffBy ?? '').trim() !== '') return null;
  return {
    question,
    says: 'Stop: people depend on this part. Somebody qualified plans this work and signs for it by name.',
    whom: QUALIFIED,
  };
}

/** What always stands beside steps with heat. */
export const HEAT_RULES =
  'Local codes, the maker of the machine and licensed practice come first; where they say otherwise, they are right.';

const CRACKS =
  'Look for cracks when it is cold, and again after a day or two: cracks from hydrogen come late.';

/** What heat does to the part; the warmth of a fit changes nothing in it. */
const AFTERWARDS = {
  bore: [
    'A bore can come out smaller than you want: heat and measure in small steps, cold, at every clock position.',
    CRACKS,
  ],
  pin: [
    'A pin bends towards the last bead as it cools: go round in small steps, and check it between centres.',
    CRACKS,
  ],
  fit: [],
} as const;

/** Usual cautions for the part as answered, for the step where they matter. */
export function heatCautions(safety: Safety, of: 'bore' | 'pin' | 'fit' = 'bore'): string[] {
  const cautions = [
    'Look again for closed pockets: hollow pins, boxed arms, grease passages. Vent them, and keep out of the line of a plug or a seal.',
    'Clear what burns from around and behind; keep an extinguisher and somebody else at hand; watch for half an hour afterwards.',
    'Eyes, hands and lungs covered; moving air. Cold is a burn as well: dry ice only in gloves and moving air, never in a closed room or pit.',
    'Heat evenly and slowly, and let it cool under a blanket. No water on steel that you do not know.',
    ...AFTERWARDS[of],
  ];
  if (safety.metal === 'known-alloy') {
    cautions.push(
      'Stay below the temperature at which this alloy was tempered, and preheat as its data sheet says.',
    );
  }
  if (safety.carriesPeople === 'yes') {
    cautions.push('The person who signs for the part sees it before it goes back to work.');
  }
  return cautions;
}
