/**
 * The words of the bore, as data. Millimetres and radians throughout; theta clockwise from 12 o'clock seen
 * looking in at face A; z inward from face A. A `Field` lies row by row: `field[iz * theta.length + it]`.
 */
import type { Instrument } from '../job/schema.ts';

/** One reading, converted: what an instrument said at a place in the bore's own frame (face A). */
export interface Sighting {
  /** Row in the survey's list of readings, from 0. */
  readonly row: number;
  readonly instrument: Instrument;
  readonly theta: number;
  readonly z: number;
  /**
   * mm: a diameter (two-point), a mean diameter (three-leg), a radius about the reference axis (radius), the
   * needle as read (sweep), a thickness (wall).
   */
  readonly value: number;
  /** One standard deviation of `value`, mm. */
  readonly sd: number;
  /** True where the sd was stated for this reading or gauge; false where it is the kind's typical figure. */
  readonly sdStated: boolean;
  /** Index into the survey's set-ups for a sweep or a wall reading; -1 for the others. */
  readonly setup: number;
}

/**
 * What the readings of one set-up share and nobody measured: a spindle's offset and lean (sweep), a boss's
 * (wall). One standard deviation each, mm; the lean is over the bore's whole length.
 */
export interface SetupPrior {
  /** +1 where a larger radius reads larger, -1 where it reads smaller (a needle turned about, a wall). */
  readonly sign: 1 | -1;
  readonly offset: number;
  readonly lean: number;
  /** The zero (sweep) or the boss's radius (wall): its likely value, NaN where only the readings tell. */
  readonly zero: number;
  readonly zeroSd: number;
  /** True where the zero is another one at each depth. */
  readonly resetEachDepth: boolean;
}

export interface Grid {
  /** Even, from 0, without the closing 2 pi. */
  readonly theta: Float64Array;
  /** From 0 to the bore's length. */
  readonly z: Float64Array;
}

/** One value at each place of a grid; NaN is not known. */
export type Field = Float64Array;

/** How smooth and how large the shape is taken to be, found from the readings; mm. */
export interface Smoothness {
  /** Standard deviation of the oval's (second lobe's) amplitude. */
  readonly lobe: number;
  /** Standard deviation of the size's change along the depth. */
  readonly size: number;
  /** Depth over which the shape keeps its likeness. */
  readonly length: number;
  /** Standard deviation of local dents and gouges. */
  readonly local: number;
  /** Factor on the instruments' stated repeatability. */
  readonly noise: number;
  /** Standard deviation of the wear on the stated side; left out: no side stated. */
  readonly worn?: number;
  /** True where there were too few readings to learn from and fixed defaults stand. */
  readonly fixed: boolean;
  /** What was stated instead of being learned; left out: nothing. */
  readonly given?: GivenSmoothness;
  /** Places that look gouged or dented; left out: none does. */
  readonly spots?: Spots;
}

/** One place whose metal departs from the rest of the wall by more than the rest departs from itself. */
export interface Spot {
  readonly theta: number;
  readonly z: number;
  /** Standard deviation of the departure at its middle, per side, mm. */
  readonly sd: number;
  /** True where the readings do not say whether it is here or straight across. */
  readonly across: boolean;
}

export interface Spots {
  readonly places: readonly Spot[];
  /** What is learned where no place is taken for one: what single readings are judged by. */
  readonly without: Smoothness;
}

/** Figures of the smoothness that the repairer states, mm; one that is left out is learned. */
export type GivenSmoothness = Partial<Pick<Smoothness, 'length' | 'local'>>;

export interface WearSurface {
  readonly grid: Grid;
  /** Radius about the reference axis. */
  readonly mean: Field;
  /** One standard deviation of the radius, all that is unknown. */
  readonly sd: Field;
  /** The same without the lobes to which no instrument of the survey responds. */
  readonly sdSeen: Field;
  readonly smoothness: Smoothness;
  /** Lobe numbers from 1 that some instrument of the survey sees. */
  readonly seenLobes: readonly number[];
  /** Prediction at each sighting: what the surface says the instrument should have read, mm. */
  readonly predicted: Float64Array;
}

/** Straight axis: at depth z it passes through (x + leanX z, y + leanY z); x to 3 o'clock, y to 12. */
export interface Axis {
  readonly x: number;
  readonly y: number;
  readonly leanX: number;
  readonly leanY: number;
}

/**
 * Where the target stands: kept at the old centre; with the least metal off; with the deepest cut as shallow as can be;
 * in line with the partner bores; or as set by hand.
 */
export type CentreRule = 'keep' | 'free' | 'least-cut' | 'partner' | 'by-hand';

export interface Target {
  readonly diameter: number;
  readonly axis: Axis;
  readonly centreRule: CentreRule;
  /** In words, when the centre or the side is assumed rather than measured; null when measured. */
  readonly assumed: string | null;
}

export interface Removal {
  /** e = R - R_target per side, in the target's frame: negative stands proud. */
  readonly deviation: Field;
  /** One standard deviation of the deviation in the target's frame (shift and lean left out where free). */
  readonly sd: Field;
  /** Metal to take off per side, at the mean, never negative. NaN where nothing may be ground. */
  readonly likely: Field;
  /** Metal to take off even if the bore is two standard deviations larger. */
  readonly sure: Field;
  /** Metal that may stand there: what is to come off if the bore is two standard deviations smaller. */
  readonly possible: Field;
  /** What a first pass may take per side: half of what is likely left, and never more than is sure. */
  readonly firstPass: Field;
  /** At the mean: mm3 and grams. */
  readonly volume: number;
  readonly mass: number;
  /** Grams of the sure and of the possible metal, place by place: no bore is two standard deviations out all over. */
  readonly sureMass: number;
  readonly possibleMass: number;
}

/** Clock range from..to clockwise, radians, or all round; depths, mm. */
export interface Gap {
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly bottom: number;
  readonly allRound: boolean;
}

export interface Zone {
  readonly kind: 'high' | 'low';
  /** Extreme of the deviation in the zone, per side, signed; where; its give-or-take (2 sd). */
  readonly peak: number;
  readonly theta: number;
  readonly z: number;
  readonly give: number;
  /** The core: all of it where at least half of the peak stands. Clock range runs clockwise from..to; allRound: a ring. */
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly bottom: number;
  /** Where it feathers to nothing at whatever depth: never inside from..to. Both the same: it goes on all round. */
  readonly outerFrom: number;
  readonly outerTo: number;
  /** Stretches within that of clock and depth where nothing of the kind stands, the largest first. */
  readonly gaps: readonly Gap[];
  /** True where there are others that no stretch of clock and depth tells. */
  readonly patchy: boolean;
  readonly allRound: boolean;
  /** mm2 of wall, mm3 of metal. */
  readonly area: number;
  readonly volume: number;
}

/** One depth's circle and oval, all across unless said. */
export interface Section {
  readonly z: number;
  /** Readings at this depth that count. */
  readonly count: number;
  readonly meanDiameter: number;
  readonly least: { readonly diameter: number; readonly theta: number };
  readonly greatest: { readonly diameter: number; readonly theta: number };
  readonly outOfRound: number;
  /** Give-or-take (2 sd) of the mean diameter, across. */
  readonly give: number;
  /**
   * Amplitude per side; theta of the first maximum clockwise from 12; one standard deviation each, that of theta NaN
   * where the lobe is too small to point. Seen lobes only, from 2.
   */
  readonly lobes: readonly {
    readonly n: number;
    readonly amplitude: number;
    readonly sd: number;
    readonly theta: number;
    readonly thetaSd: number;
  }[];
  /** Least-squares circle through the surface's section, where points or radii show a centre. */
  readonly circle: { readonly x: number; readonly y: number; readonly diameter: number } | null;
}

/** A circle at one depth, or a cylinder along the bore, and how far the wall lies about it. */
export interface Plug {
  /** Of a circle: its centre, without lean. */
  readonly axis: Axis;
  /** Across, mm. */
  readonly diameter: number;
  /** Greatest less least distance of the wall from it, per side, mm. */
  readonly range: number;
}

interface FourPlugs {
  /** Least squares: the average round. */
  readonly average: Plug | null;
  /** Minimum zone; its diameter is midway between the two circles or cylinders. */
  readonly zone: Plug | null;
  /** Maximum inscribed: the biggest plug that enters. Null where nothing holds it. */
  readonly entering: Plug | null;
  /** Minimum circumscribed: the smallest clean-up. */
  readonly around: Plug | null;
}

/** What enters the bore and what cleans it up; null where the points leave it open. */
export interface Plugs {
  /** First and last measured depth, mm: the cylinders span these. */
  readonly from: number;
  readonly to: number;
  readonly sections: readonly (FourPlugs & { readonly z: number })[];
  /** Null with one measured depth. */
  readonly bore: FourPlugs | null;
  /** The least-squares cone: across at the first and the last measured depth. */
  readonly taper: {
    readonly axis: Axis;
    readonly from: number;
    readonly to: number;
    readonly range: number;
  } | null;
}

export type ProfileShape =
  | 'straight'
  | 'taper'
  | 'bell-at-A'
  | 'bell-at-B'
  | 'bell-both'
  | 'barrel'
  | 'waist'
  | 'step'
  | 'not-told';

export interface Profile {
  readonly shape: ProfileShape;
  /** Evidence: how much better than the next best shape, as a difference of the stated criterion. */
  readonly evidence: number;
  readonly criterion: 'BIC';
  readonly candidates: readonly { readonly shape: ProfileShape; readonly criterion: number }[];
  /** Across, mm per mm of depth, positive widens inward; one standard deviation. NaN with one depth. */
  readonly taper: number;
  readonly taperSd: number;
  /** How much larger the mouth (or middle) is than the body, across, mm; 0 where straight. */
  readonly depthOfShape: number;
  /** How far in from the face it reaches, mm; NaN where it has no end. */
  readonly reach: number;
  /** The shape as fitted to the measured depths' mean diameters, across, mm, over the whole bore; none where not told. */
  readonly fitted: readonly { readonly z: number; readonly diameter: number }[];
}

/** How the axis runs against the one that the readings were taken from: a datum, a spindle, a boss. */
export type BoreAxis =
  | {
      readonly status: 'told';
      readonly instrument: 'two-point' | 'radius' | 'sweep' | 'wall';
      /** mm from that axis; `sd` of either coordinate. */
      readonly centres: readonly {
        readonly z: number;
        readonly x: number;
        readonly y: number;
        readonly sd: number;
      }[];
      /**
       * Sideways mm per mm of depth, towards theta as the depth grows; one standard deviation, the set-up's own lean
       * included; the chance that no lean at all would show as much.
       */
      readonly lean: {
        readonly slope: number;
        readonly theta: number;
        readonly sd: number;
        readonly chance: number;
      };
      /**
       * The centre farthest off the line, mm, where and which way, one standard deviation of that centre; the least
       * cylinder about a line that holds all centres, its diameter; the chance that a straight axis would stray as
       * much. Null with two depths.
       */
      readonly straightness: {
        readonly distance: number;
        readonly z: number;
        readonly theta: number;
        readonly sd: number;
        readonly zone: number;
        readonly chance: number;
      } | null;
    }
  | { readonly status: 'not-told'; readonly why: string };

/** How the long way of the oval goes along the depth. Angles are clock positions of it, 0 to pi. */
export interface OvalTurn {
  /** not-told: it turns, and steadily or all at once explain it about equally well. */
  readonly kind: 'same' | 'steady' | 'at-once' | 'not-told';
  /** Between turning and not turning, by the criterion; of the one that is told over the other. */
  readonly evidence: number;
  readonly criterion: 'BIC';
  readonly candidates: readonly {
    readonly kind: 'same' | 'steady' | 'at-once';
    readonly criterion: number;
  }[];
  /** Near the rim and near the bottom; one standard deviation. */
  readonly first: number;
  readonly firstSd: number;
  readonly last: number;
  readonly lastSd: number;
  /** From first to last, positive clockwise. */
  readonly turn: number;
  readonly turnSd: number;
  /** All at once (or perhaps so): the first depth that looks turned, and the readings from there on; else NaN, none. */
  readonly from: number;
  readonly rows: readonly number[];
  /** Each depth by itself: amplitude per side, direction; NaN where the oval is too small to point. */
  readonly depths: readonly {
    readonly z: number;
    readonly amplitude: number;
    readonly sd: number;
    readonly theta: number;
    readonly thetaSd: number;
  }[];
}

/** A plain sentence for the repairer, and how much it matters; a fault is one that leaves no shape to believe. */
export interface Remark {
  readonly kind: 'missing' | 'assumed' | 'warning' | 'finding' | 'fault';
  readonly text: string;
}

/** A reading that cannot be used as it stands, or a reading in doubt. */
export interface Check {
  readonly row: number;
  readonly suspect: boolean;
  /** Why it cannot be used, or the likeliest slip, in words without a full stop; 'unexplained' where none fits. */
  readonly slip: string;
  /** The reading as it would be typed in the job's units, were the slip undone; null where only a retake helps. */
  readonly suggested: string | null;
  /** What the other readings lead one to expect, mm as the instrument reads, and 2 sd of that; NaN where they do not. */
  readonly expected: number;
  readonly give: number;
}
