/** A hand with a gauge at a bore of known wear: readings typed into a survey, place by place. */
import { readClock } from '../job/clock.ts';
import { setCell, setPlanFace, setPlanGauge } from '../job/edits.ts';
import type { Face, Instrument, Job, Unit } from '../job/schema.ts';
import { read } from './simulate.ts';
import type { Truth } from './wear.ts';

const MM: Readonly<Record<Unit, number>> = { in: 25.4, thou: 0.0254, mm: 1 };

/** How one survey is taken. Depths are texts in the job's units, from `face`; clock positions as seen from it. */
export interface Taking {
  readonly instrument: Instrument;
  readonly gauge: string;
  readonly depths: readonly string[];
  readonly clocks: readonly string[];
  readonly face?: Face;
  /** mm, one standard deviation. */
  readonly noise: number;
  /** Smallest step that is typed, in `unit`. */
  readonly step: number;
  readonly decimals: number;
  readonly unit: Unit;
  /** mm: readings are typed as over or under this size; left out: in full. */
  readonly over?: number;
  /** mm from face A, for depths from face B. */
  readonly length: number;
  readonly seed: number;
  /** The first place is read once more at the end. */
  readonly repeatFirst?: boolean;
  /** A centred pin's offset from the axis, mm. */
  readonly offset?: { readonly x: number; readonly y: number };
}

/** The job with all readings of one taking in the survey, in the order of the hand: round each depth. */
export function measured(
  job: Job,
  featureId: string,
  surveyId: string,
  truth: Truth,
  taking: Taking,
): Job {
  const face = taking.face ?? 'A';
  const cells = taking.depths.flatMap((depth) => taking.clocks.map((clock) => ({ depth, clock })));
  const first = cells[0]!;
  const visits = taking.repeatFirst ? [...cells, first] : cells;
  const values = read(
    truth,
    taking.instrument,
    visits.map(({ depth, clock }) => {
      const mm = Number(depth) * MM[job.units];
      const seen = readClock(clock, face);
      if (!seen.ok) throw new RangeError(seen.why);
      return { theta: seen.theta, z: face === 'A' ? mm : taking.length - mm };
    }),
    {
      noise: taking.noise,
      resolution: 0,
      seed: taking.seed,
      standing: { x: 0, y: 0, leanX: 0, leanY: 0, ...taking.offset },
    },
  );
  let next = setPlanGauge(job, featureId, surveyId, taking.gauge);
  next = setPlanFace(next, featureId, surveyId, face);
  cells.forEach((cell, index) => {
    const text = typedText(values[index]!, taking);
    next = setCell(next, featureId, surveyId, { ...cell, values: text, unit: taking.unit });
  });
  if (!taking.repeatFirst) return next;
  const both = `${typedText(values[0]!, taking)};${typedText(values.at(-1)!, taking)}`;
  return setCell(next, featureId, surveyId, { ...first, values: both, unit: taking.unit });
}

function typedText(mm: number, { unit, over, step, decimals }: Taking): string {
  const figure = (mm - (over ?? 0)) / MM[unit];
  const text = (Math.round(figure / step) * step).toFixed(decimals);
  if (over === undefined || Number(text) <= 0)
    return Number(text) === 0 ? (0).toFixed(decimals) : text;
  return `+${text}`;
}
