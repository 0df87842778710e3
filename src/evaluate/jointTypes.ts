/** The joint, as data: every part side by side, and what is asked of them. */
import type { PartSize, Worn } from '../bore/partSize.ts';
import type { Patterns } from '../bore/patternTypes.ts';
import type { Measured, PlayNow, WallLeft } from '../bore/play.ts';
import type { Profile, Section, WearSurface } from '../bore/types.ts';
import type { BoreFacts } from '../job/facts.ts';
import type { Feature, Stage } from '../job/schema.ts';

/** What is asked of one survey. */
export interface Seen {
  readonly name: string;
  readonly stage: Stage;
  readonly surface: WearSurface | null;
  readonly sections: readonly Section[];
  readonly profile: Profile | null;
  readonly patterns: Patterns;
}

/** What is asked of a bore, pin or bushing. */
export interface SeenPart {
  readonly id: string;
  readonly name: string;
  readonly kind: Feature['kind'];
  readonly facts: BoreFacts;
  readonly surveys: readonly Seen[];
}

export interface Mirror {
  readonly hole: string;
  /** Null where no pin is known. */
  readonly pin: string | null;
  readonly verdict: 'agrees' | 'contradicts' | 'not-measured' | 'cannot-tell';
  /**
   * `one-side`: both worn along one line; `all-round`: worn all round; `turned`: the hole on one side and the pin all
   * round, as a pin that turned; `mirrored`: along one line once the clock of one is taken from the other face;
   * `crossed`: along other lines; `pin-unworn`, `hole-unworn`; `no-new-size`,
   * `no-pin`, `pin-list`: what is not measured or stated.
   */
  readonly why:
    | 'one-side'
    | 'all-round'
    | 'turned'
    | 'mirrored'
    | 'crossed'
    | 'pin-unworn'
    | 'hole-unworn'
    | 'no-new-size'
    | 'no-pin'
    | 'pin-list';
  /** Long way of the hole and worn line of the pin, clock positions 0 to pi; NaN none. */
  readonly holeTheta: number;
  readonly pinTheta: number;
}

export interface JointPart {
  readonly id: string;
  readonly name: string;
  readonly kind: Feature['kind'];
  /** The last survey with readings; '' for sizes typed as a list. */
  readonly survey: string;
  /** Across, mm; NaN not known. */
  readonly newSize: number;
  /** `unworn-end`: the part's own largest (outside) diameter stands in for it. */
  readonly newFrom: 'typed' | 'unworn-end' | 'missing';
  readonly size: PartSize;
  /** Null where the new size is not known. */
  readonly worn: Worn | null;
}

/** A bushing to be fitted, as bought; NaN not given. */
export interface NewBushing {
  readonly bore: string;
  readonly name: string;
  readonly outside: number;
  readonly inside: number;
  readonly wall: number;
}

export interface Joint {
  readonly parts: readonly JointPart[];
  readonly fresh: readonly NewBushing[];
  readonly plays: readonly (PlayNow & {
    readonly hole: string;
    readonly pin: string;
    /** The hole is a new bushing's, read once that was in. */
    readonly fitted: boolean;
  })[];
  readonly walls: readonly (WallLeft & {
    readonly name: string;
    /** Whose outside it was taken from: the old bushing's own, or the new one's in its stead. */
    readonly from: 'measured' | 'new-bushing';
  })[];
  readonly mirrors: readonly Mirror[];
  /** Bores that hold a bushing whose inside nobody measured: their play now is not known. */
  readonly unread: readonly string[];
}

/** A part with all that is known of it. */
export interface Known extends JointPart, Measured {
  readonly seen: Seen | null;
}
