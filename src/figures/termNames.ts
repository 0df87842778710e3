/** Words of the trade that the notebook explains on a tap, and how each is found in a sentence. */

/** Pattern of each term, without flags or groups that capture; longer wordings come before shorter ones. */
const PATTERNS = {
  'out-of-round': 'out[- ]of[- ]round',
  'per-side': 'per side',
  across: 'across',
  'give-or-take': 'give[- ]or[- ]take',
  target: 'target',
  'high-spot': 'high spots?|proud',
  'low-spot': 'low spots?',
  'bell-mouth': 'bell-mouth(?:ed)?|like a bell',
  taper: 'taper(?:s|ed)?',
  barrel: 'barrel(?:led)?|barrel-shaped',
  waist: 'waist(?:ed)?|hourglass',
  egg: 'egg-shaped',
  oval: 'oval',
  lobes: '(?:odd |three-|four-|five-|six-|three- or five-)lobe[ds]?|lobes?',
  'crossed-wear': 'crossed wear',
  'clock-pair': 'clock pairs?',
  'clock-position': 'clock (?:positions?|hours?)',
  'face-a': 'face [AB]',
  'set-up': 'set-ups?',
  sweep: 'swept(?: round)?|sweeps?',
  'telescoping-gauge': 'telescoping gauge',
  'wall-thickness': 'wall thickness',
  'press-fit': 'press fit',
  seat: 'seat(?:ed)?',
  play: 'play',
  'biggest-plug': 'biggest plug',
  'average-round': 'average round',
  'clean-up': 'cleans? up(?: everything)?|clean-up',
  feather: 'feather(?:s|ed)?',
  boss: 'boss',
  repeats: 'repeats',
  'old-centre': 'old centre',
} as const;

export type TermId = keyof typeof PATTERNS;

const NAMES = Object.keys(PATTERNS) as TermId[];
const WHOLE = NAMES.map((id) => [id, new RegExp(`^(?:${PATTERNS[id]})$`, 'i')] as const);
const ANY = new RegExp(`\\b(${Object.values(PATTERNS).join('|')})\\b`, 'i');
/** The same, everywhere in a text, each find a part of its own when split by. */
const EACH = new RegExp(ANY.source, 'gi');

export interface TextPart {
  readonly text: string;
  /** Null: no term. */
  readonly term: TermId | null;
}

/** A text in parts, in order; put together again they are the text. */
export function termParts(text: string): TextPart[] {
  if (!ANY.test(text)) return [{ text, term: null }];
  // Every second part is a term: the pattern has one group.
  return text
    .split(EACH)
    .map((part, at) => ({ text: part, term: at % 2 === 1 ? termOf(part) : null }))
    .filter((part) => part.text !== '');
}

/** The term that a wording stands for; null: none. */
export function termOf(wording: string): TermId | null {
  return WHOLE.find(([, pattern]) => pattern.test(wording))?.[0] ?? null;
}

export const TERM_IDS: readonly TermId[] = NAMES;
