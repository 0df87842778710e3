/** The wear pattern of one survey, as data: what is named, by which rule, and what stays open. */

/**
 * What readings can show. Patterns that only eyes can show (scored, galled, pitted) are asked for in words; whether two
 * bores stand on one axis is not seen in either by itself.
 */
export type PatternName =
  | 'egg'
  | 'oval'
  | 'egg-or-oval'
  | 'off-the-clock'
  | 'crossed'
  | 'three-lobed'
  | 'dent'
  | 'taper'
  | 'bell-one'
  | 'bell-both'
  | 'barrel'
  | 'waist'
  | 'step'
  | 'round-but-big'
  | 'rough';

/**
 * By what a pattern is told, and what `sure` then is: the chance that a bore without it would show as much; the
 * difference of BIC to a bore without it; the odds, as 2 ln of the ratio of likelihoods, to the next best; the amount in
 * its standard deviations; or the repairer's own statement (NaN).
 */
export type PatternRule = 'chance' | 'BIC' | 'odds' | 'sds' | 'stated';

export interface Pattern {
  readonly name: PatternName;
  readonly rule: PatternRule;
  readonly sure: number;
  /** Size of the pattern, mm, and two standard deviations of it. For `rough`: the scatter of one reading. */
  readonly amount: number;
  readonly give: number;
  /** Whether `amount` is a difference of diameters or of radii. */
  readonly per: 'across' | 'side';
  /** Clock position: the worn side, the long way (0 to pi), the first crest, the dent; NaN: all round. */
  readonly theta: number;
  /** First and last depth that show it, mm. */
  readonly from: number;
  readonly to: number;
  /** True where every measured depth shows it. */
  readonly everywhere: boolean;
  /** Of a bell: the face that it opens to. */
  readonly face: 'A' | 'B' | null;
}

/**
 * What cannot be told: egg or oval, since no reading sees sides (`sides`) or those that do leave it open
 * (`sides-weak`); the shape along the depth, since two fit alike (`along`) or depths are few; an oval, for want of clock
 * pairs (`few-clocks`) or with a gauge that reads the mean of it (`three-leg`); odd lobes, since none sees them.
 */
export type OpenQuestion =
  | 'sides'
  | 'sides-weak'
  | 'along'
  | 'few-clocks'
  | 'few-depths'
  | 'three-leg'
  | 'lobes';

export interface Patterns {
  readonly named: readonly Pattern[];
  readonly open: readonly OpenQuestion[];
}
