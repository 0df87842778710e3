/** With what one more reading of a survey could be taken: the job's gauges, and what the survey has set up already. */
import { gaugeFigures, gaugeKind, readingSd } from './gauges.ts';
import type { Feature, Gauge, Instrument, Job, Survey } from './schema.ts';
import {
  freshSetup,
  roundnessOf,
  type SetupFacts,
  setupPlace,
  sharesSetup,
  unnamedSetups,
} from './setups.ts';

/** A gauge with which one more reading could be taken; millimetres. */
export interface AtHand {
  /** As the job calls it; '' for a generic kind that the job does not hold. */
  readonly gauge: string;
  readonly name: string;
  readonly instrument: Instrument;
  /** One standard deviation of a reading. */
  readonly sd: number;
  /** Depths from face A that it gets to. */
  readonly from: number;
  readonly to: number;
  /** Index into the survey's set-ups for a sweep or a wall reading; -1 for the others. */
  readonly setup: number;
  /** A set-up not made yet, of which one reading by itself tells nothing: it is weighed as a whole. */
  readonly fresh: SetupFacts | null;
}

/**
 * @param length of the bore, mm; NaN: gauges are taken to reach every depth from face A
 * @returns no gauge that reads radii, unless the survey is read with it already: that needs an axis of its own
 */
export function gaugesAtHand(job: Job, feature: Feature, survey: Survey, length: number): AtHand[] {
  const own = job.gauges.flatMap((gauge) => entries(job, gauge, feature, survey, length));
  if (own.some(({ instrument }) => instrument === 'sweep')) return own;
  const generic = gaugeKind('indicator');
  const face = survey.plan.face;
  return [
    ...own,
    {
      gauge: '',
      name: generic.name,
      instrument: generic.kind,
      sd: Math.hypot(generic.repeatability, generic.resolution / Math.sqrt(12)),
      ...reached(face, generic.reach, length),
      setup: -1,
      fresh: freshSetup('sweep', feature),
    },
  ];
}

function entries(
  job: Job,
  gauge: Gauge,
  feature: Feature,
  survey: Survey,
  length: number,
): AtHand[] {
  const used = survey.readings.filter((reading) => reading.gauge === gauge.id);
  if (gauge.kind === 'radius' && used.length === 0) return [];
  const figures = gaugeFigures(gauge);
  const plain: AtHand = {
    gauge: gauge.id,
    name: gauge.name,
    instrument: gauge.kind,
    sd: readingSd(gauge).mm,
    ...reached(survey.plan.face, figures.reach.mm, length),
    setup: -1,
    fresh: null,
  };
  if (!sharesSetup(gauge.kind)) return [plain];
  const made = survey.setups.flatMap((setup, index) => {
    if (setup.gauge !== gauge.id) return [];
    const sd = Math.hypot(plain.sd, roundnessOf(gauge.kind, setup));
    return [{ ...plain, sd, setup: index, ...reached(setup.face, figures.reach.mm, length) }];
  });
  const sd = Math.hypot(plain.sd, roundnessOf(gauge.kind, undefined));
  const unnamed = unnamedSetups(job, survey);
  const shared = unnamed.includes(gauge.id)
    ? [{ ...plain, sd, setup: setupPlace(survey, unnamed, { gauge: gauge.id }) }]
    : [];
  const both = [...made, ...shared];
  return both.length > 0 ? both : [{ ...plain, sd, fresh: freshSetup(gauge.kind, feature) }];
}

/** From its face as deep as it gets, as depths from face A. */
function reached(face: 'A' | 'B', reach: number, length: number): { from: number; to: number } {
  if (face === 'A' || Number.isNaN(length)) return { from: 0, to: reach };
  return { from: Math.max(0, length - reach), to: length };
}
