/** The application on one page: Job -> Evaluation, each stage named in order. */
import type {
  Check,
  Profile,
  Remark,
  Removal,
  Section,
  Sighting,
  Target,
  WearSurface,
  Zone,
} from './bore/types.ts';
import type { Units } from './job/schema.ts';

/** A number that stands in the job or is the trade's default for it; mm. NaN: not known. */
export interface Known {
  readonly mm: number;
  readonly from: 'typed' | 'default' | 'missing';
}

/** What is known of the bore itself, once converted. */
export interface BoreFacts {
  readonly nominal: Known;
  readonly length: Known;
  readonly bossOutside: Known;
  readonly bushingOutside: Known;
  readonly pressFit: Known;
  readonly clearance: Known;
  /** Depths of the wall that the bushing sits on; the whole length where no seat is stated. */
  readonly seats: readonly { readonly from: number; readonly to: number }[];
  readonly keepouts: readonly {
    readonly id: string;
    readonly kind: 'grease-hole' | 'chamfer' | 'groove' | 'other';
    readonly from: number;
    readonly to: number;
    /** NaN: all round. */
    readonly theta: number;
    readonly width: number;
  }[];
  /** Clock position of the load, radians; NaN not stated. */
  readonly load: number;
}

export interface SurveyEvaluation {
  readonly id: string;
  readonly name: string;
  readonly status: 'ok' | 'no-readings' | 'no-size' | 'no-length' | 'failed';
  readonly sightings: readonly Sighting[];
  readonly sections: readonly Section[];
  readonly profile: Profile | null;
  readonly checks: readonly Check[];
  readonly blindSpots: readonly Remark[];
  readonly surface: WearSurface | null;
  readonly target: Target | null;
  readonly removal: Removal | null;
  readonly zones: readonly Zone[];
  readonly notes: readonly Remark[];
}

export interface BoreEvaluation {
  readonly id: string;
  readonly name: string;
  readonly facts: BoreFacts;
  readonly surveys: readonly SurveyEvaluation[];
}

export interface Evaluation {
  readonly units: Units;
  readonly bores: readonly BoreEvaluation[];
}
