/**
 * What the trade says of each wear pattern of its catalogue, for the apprentice: what it is, what brings it about, what
 * to do, and which reading tells it from what looks alike. Common practice of the trade; no published source.
 */
import type { PatternName } from '../bore/patternTypes.ts';
import { PATTERN_FACTS } from './patternTable.ts';

export interface GalleryEntry {
  readonly name: string;
  readonly title: string;
  readonly causes: readonly string[];
  readonly remedy: string;
  /** What looks like it, and the reading that tells. */
  readonly alike: string;
}

type Named = Exclude<PatternName, 'egg-or-oval' | 'rough'>;

/** Of those that readings can show: what to do, and what they may be taken for. */
const NAMED: Readonly<Record<Named, { readonly remedy: string; readonly alike: string }>> = {
  egg: {
    remedy:
      'Decide first whether the old centre must be kept: kept, it costs twice the depth of the wear across; let go, once. ' +
      'Then build up the low side or make the bushing larger, and look at the pin on the side that faces it.',
    alike:
      'An oval worn half as deep on both sides reads just the same across. The wall between bore and boss, read at both ends ' +
      'of the long way, tells: thinner on one side alone is an egg.',
  },
  oval: {
    remedy:
      'Grind the two high sides, or close the long way by squeezing; then look for what shakes the joint.',
    alike:
      'An egg twice as deep on one side reads the same across, and the wall at both ends of the long way tells. A three-leg ' +
      'gauge reads neither.',
  },
  'off-the-clock': {
    remedy: 'As an oval; and from now on read four clock pairs or more, since two of them miss it.',
    alike:
      'Read at 12–6 and 3–9 alone it looks round and a little large. One more reading, at 1:30–7:30, tells.',
  },
  taper: {
    remedy:
      'Look for a bent arm or ear before anything else. Grind the small end; never line the big end alone.',
    alike:
      'A step, or a bell-mouth read at too few depths, gives the same two sizes at the ends. A reading at the middle tells: ' +
      'on a straight taper it lies half-way.',
  },
  'bell-one': {
    remedy:
      'Where it is less than a fifth of the length: leave it, or seat the bushing deeper, or use a longer one. Where it is ' +
      'more, fill it.',
    alike:
      'The chamfer itself, read by mistake, looks like a bell. Read again 3 to 6 mm (1/8 to 1/4 in) past it.',
  },
  'bell-both': {
    remedy:
      'Only the middle holds the bushing: see how much of the length that is, of which 70 % is wanted, before it is trusted.',
    alike:
      'A waist curves all the way from end to end; a bell keeps a straight stretch. Two depths between middle and mouth tell.',
  },
  barrel: {
    remedy:
      'If both ends hold the bushing, the middle may stay, and holds grease. If not, fill it.',
    alike:
      'With a caliper, whose jaws end at 16 mm (5/8 in), it looks straight. One reading at the middle with a gauge that gets ' +
      'there tells.',
  },
  waist: {
    remedy: 'Take the middle down with a long stone or strip that rides on both ends.',
    alike:
      'A bell at both mouths has a straight stretch between; a waist has none. Two depths between middle and mouth tell.',
  },
  crossed: {
    remedy:
      'Mend the faces and the side gap first, or it comes again. Then aim at one straight round through the whole bore, not at ' +
      'a circle for each depth.',
    alike:
      'Across it reads like an oval at both ends and round in the middle. A sweep of rim, middle and bottom in one set-up ' +
      'tells: the needle is out on opposite sides.',
  },
  'three-lobed': {
    remedy: 'Blue a plug and scrape the three places that it touches.',
    alike:
      'Across it reads round, and a plug of that size does not enter. A sweep, or the wall at twelve clock positions, tells.',
  },
  dent: {
    remedy:
      'Scrape the proud place away and look for a crack straight across from it. Leave the grinder off its neighbours.',
    alike: 'A burr or grit reads alike: wipe, dress the edge, read that place again.',
  },
  step: {
    remedy:
      'Blend it, or use its unworn side as the place to measure from. Never take a taper across it.',
    alike:
      'Read at two depths alone it passes for a taper. One reading on either side of the jump, close together, tells.',
  },
  'round-but-big': {
    remedy:
      'A larger bushing; and find why the old one turned, such as a seized pin, no grease, or too weak a press fit.',
    alike:
      'Read on its own it looks like a good bore. Only the size when new, or an unworn land, shows what is gone.',
  },
};

const EYES: readonly GalleryEntry[] = [
  {
    name: 'scored-along',
    title: 'Scored along: grooves from end to end',
    causes: ['grit', 'a bushing that tore as it went in', 'metal picked up and dragged'],
    remedy:
      'Dress the ridges off. Narrow grooves that take less than a tenth of the wall may stay: the bushing bridges them.',
    alike:
      'An unsteady hand scatters its readings as well. Read one place three times: if these agree, it is the wall.',
  },
  {
    name: 'scored-round',
    title: 'Scored round: rings at one depth',
    causes: ['grit under a seal', 'a keeper that let go, so that the pin spun'],
    remedy: 'See to the keeper and the seal; dress the ridges, and leave the rings.',
    alike:
      'Between two measured depths it is not seen at all, and at one it looks like a step. A fingernail along the depth tells.',
  },
  {
    name: 'galled',
    title: 'Galled: metal torn here and smeared there',
    causes: ['running dry', 'too little room', 'two parts of the same hardness on each other'],
    remedy:
      'Cut the smear away, check the hardness of pin and bushing, and give them more room. Blue or brown metal has been hot.',
    alike:
      'A single proud reading passes for a dent. Bright smears on the pin, across from it, tell.',
  },
  {
    name: 'pitted',
    title: 'Pitted: scattered small lows',
    causes: ['standing water', 'salt', 'shaking while it stood still'],
    remedy:
      'Leave pits out of the size, as long as 70 % of the wall is sound land. A gap-filling compound and grease help.',
    alike: 'A gauge that lands in a pit reads large by itself. Move it a little and read again.',
  },
  {
    name: 'two-ear-skew',
    title: 'Two ears out of line',
    causes: ['a bent frame', 'one ear rebuilt by itself', 'welds that pulled'],
    remedy:
      'Each bore by itself may be good. Give both one axis: send it out to be bored in line, or set in new bosses on a dummy ' +
      'pin. Grinding one ear towards its own middle makes it worse.',
    alike:
      'No reading inside one ear shows it. A straight bar through both, with feelers on four sides at each, tells: tight on ' +
      'top in one ear, below in the other.',
  },
];

/** In the order of the catalogue. */
export const GALLERY: readonly GalleryEntry[] = [
  ...(Object.keys(NAMED) as Named[]).map((name) => {
    const { title, causes } = PATTERN_FACTS[name];
    return { name, title, causes, ...NAMED[name] };
  }),
  ...EYES,
];

/** What to ask of a worn joint before any sum, in this order. */
export const QUESTIONS: readonly string[] = [
  'Which side is worn?',
  'Which end is worn?',
  'Are both ears worn alike?',
  'Does the pin show the mirror of it? One that stands still wears on one side, one that turns wears all round.',
  'How does the grease look: dry, gritty, or full of rust?',
  'What do the faces show: even wear, or a shiny edge?',
];
