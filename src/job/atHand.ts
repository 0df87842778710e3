/** With what one more reading of a survey could be taken: what is at hand, and what the survey has set up already. */
import { gaugeFigures, gaugeKind, gaugeKindsFor, kindOfGauge, readingSd } from './gauges.ts';
import type { Feature, Gauge, Instrument, Job, Survey } from './schema.ts';
import {
  freshSetup,
  roundnessOf,
  type SetupFacts,
  setupPlace,
  sharesSetup,
  unnamedSetups,
} from './setups.ts';
import type { Shop } from './shop.ts';
import { shopGaugeId } from './shopGauges.ts';

/** A gauge with which one more reading could be taken; millimetres. */
export interface AtHand {
  /** As the job calls it, or as `shopGaugeId` does; '' for a generic kind that neither of them holds. */
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
 * @param shop null, or no gauges in it: nobody has said, and the job's and a dial indicator are taken to be at hand.
 *   Else what the shop has; the job's own of those kinds stand for the shop's
 * @param length of the bore, mm; NaN: gauges are taken to reach every depth from face A
 * @returns no gauge that reads radii, unless the survey is read with it already: that needs an axis of its own
 */
export function gaugesAtHand(
  job: Job,
  feature: Feature,
  survey: Survey,
  length: number,
  shop: Shop | null = null,
): AtHand[] {
  const here = (gauges: readonly Gauge[]) =>
    gauges.flatMap((gauge) => entries(job, gauge, feature, survey, length));
  if (shop?.gauges !== undefined) return here(chosen(job, feature, survey, shop.gauges));
  const own = here(job.gauges);
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

/** Those of the job that the shop has, or that stand in the bore already; and those of the shop that the job lacks. */
function chosen(
  job: Job,
  feature: Feature,
  survey: Survey,
  shop: readonly Gauge[],
): readonly Gauge[] {
  const typeOf = (gauge: Gauge) => kindOfGauge(gauge).type;
  const has = new Set(shop.map(typeOf));
  const fits = new Set(gaugeKindsFor(feature.kind).map(({ type }) => type));
  const used = new Set(survey.readings.map(({ gauge }) => gauge));
  const own = job.gauges.filter(
    (gauge) => has.has(typeOf(gauge)) || (gauge.kind === 'radius' && used.has(gauge.id)),
  );
  const held = new Set(own.map(typeOf));
  const more = shop
    .filter((gauge) => fits.has(typeOf(gauge)) && !held.has(typeOf(gauge)))
    .map((gauge) => ({ ...gauge, id: shopGaugeId(gauge) }));
  return [...own, ...more];
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
