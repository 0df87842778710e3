/**
 * What the trade knows of each wear pattern: its name in words, what usually brings it about, what to look at next, and
 * what it may be taken for. Common practice of the trade; no published source.
 */
import type { PatternName } from '../bore/patternTypes.ts';

export interface PatternFacts {
  readonly title: string;
  readonly causes: readonly string[];
  readonly check: readonly string[];
  /** What looks like it, and the reading that would tell; empty: nothing does. */
  readonly alike: string;
}

export const PATTERN_FACTS: Readonly<Record<PatternName, PatternFacts>> = {
  egg: {
    title: 'Egg-shaped: worn on one side',
    causes: ['a load that always pulls the same way', 'plain age', 'dry grease'],
    check: [
      'the pin, on the side that faces the wear',
      'how the grease reaches the loaded side',
      'whether to keep the old centre, which costs twice the diameter',
    ],
    alike: '',
  },
  oval: {
    title: 'Oval: both ends of its long way worn alike',
    causes: ['a load that goes to and fro', 'shocks'],
    check: ['what strikes or rocks the joint', 'the pin, on both sides'],
    alike: '',
  },
  'egg-or-oval': {
    title: 'Out of round: an egg or an oval',
    causes: [
      'a load that always pulls one way, if it is an egg',
      'a load that goes to and fro, if it is an oval',
    ],
    check: ['the pin, for wear on one side or on two', 'which way the load pulls'],
    alike:
      'Worn on one side or half as deep on both, it reads alike across. The wall between bore and boss, read at both ' +
      'ends of the long way, tells which, as truly as the boss is round and concentric.',
  },
  'off-the-clock': {
    title: 'Its long way lies between 12–6 and 3–9',
    causes: ['a link or a rod that pulls at an angle'],
    check: ['where the pull comes from', 'four clock pairs or more, at every reading to come'],
    alike: 'Read at 12–6 and 3–9 alone it would look rounder than it is, or quite round.',
  },
  crossed: {
    title: 'Crossed: opposite sides worn at opposite ends',
    causes: ['a pin that rocks', 'side load', 'worn faces or missing face shims'],
    check: [
      'the faces and the side gap before anything else',
      'one straight cylinder through the whole bore instead of a circle at each depth',
    ],
    alike: '',
  },
  'three-lobed': {
    title: 'Three-lobed',
    causes: ['held in a three-jaw chuck when it was bored', 'three welds that pulled'],
    check: [
      'a plug with marking blue, which touches at three places',
      'the three high places between, which are what to scrape',
    ],
    alike: 'Across it reads nearly alike everywhere, and a plug of that size does not enter.',
  },
  dent: {
    title: 'A dent: one place stands proud',
    causes: ['a hammer blow', 'a weld bead on the outside', 'a vice'],
    check: ['the wall opposite it, for a crack', 'the outside of the boss at that clock position'],
    alike: 'A burr or grit reads alike: wipe, dress the edge and read that place again.',
  },
  taper: {
    title: 'Straight taper',
    causes: ['a load that hangs over one end', 'a bent arm', 'one ear that carries it all'],
    check: ['ears and arm, for a bend', 'the small end, which is what to grind'],
    alike: '',
  },
  'bell-one': {
    title: 'Bell-mouth at one end',
    causes: [
      'a bent pin or an ear out of line that bears on the edge',
      'a driver that slipped',
      'a grinder that stayed at the mouth',
    ],
    check: [
      'the pin, for a bend',
      'a bushing that sits deeper or is longer, where the mouth is under a fifth of the length',
    ],
    alike: '',
  },
  'bell-both': {
    title: 'Bell-mouth at both ends',
    causes: ['rocking in too much play', 'a loose bushing that walks'],
    check: ['how much of the length still holds the bushing, of which 70 % is wanted'],
    alike: '',
  },
  barrel: {
    title: 'Barrel: widest in the middle',
    causes: ['grit or a grease groove at the middle', 'an old relief', 'faces drawn in by welds'],
    check: [
      'the middle with a gauge that gets past the first 16 mm (5/8 in), which a caliper does not',
      'both ends: if they hold the bushing, the middle may stay as it is',
    ],
    alike: '',
  },
  waist: {
    title: 'Waist: tightest in the middle',
    causes: ['grinding by hand from both ends', 'long rocking'],
    check: ['the middle, which is the metal to take, with a long stone'],
    alike: '',
  },
  step: {
    title: 'A step along the depth',
    causes: ['an old bushing shorter than the bore', 'the land of a seal'],
    check: ['the narrower side: if it is unworn, it shows the old centre and the old size'],
    alike: 'Taken together its two sides would pass for a taper: none is measured across it.',
  },
  'round-but-big': {
    title: 'Round and straight, but large',
    causes: ['a bushing that turned in its bore', 'rubbing under small movements'],
    check: [
      'the wall, for red-brown dust',
      'why it turned: a seized pin, no grease, too weak a press fit',
    ],
    alike: '',
  },
  rough: {
    title: 'Readings that scatter',
    causes: ['scratches along the bore', 'torn or smeared metal', 'pits', 'an unsteady gauge'],
    check: ['one place, read three times: if these agree, it is the wall and not the hand'],
    alike: '',
  },
};

/** Only eyes can show these. */
export const EYES =
  'Only eyes can show scratches along it, rings round it, torn or smeared metal and pits: wipe it clean and look.';
