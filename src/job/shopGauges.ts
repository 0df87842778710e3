/** The gauges of the shop: which kinds are at hand, and one of them taken into a job. */
import { idSource } from './change.ts';
import { gaugeKind, gaugeKindsFor, kindOfGauge } from './gauges.ts';
import type { Gauge, GaugeType, Job } from './schema.ts';
import { SHOP_FORMAT, SHOP_VERSION, type Shop } from './shop.ts';

/** The generic kinds that one may have for a bore; one that reads radii is made for the bore, and needs an axis of its own. */
export const SHOP_KINDS = gaugeKindsFor('bore').filter(({ kind }) => kind !== 'radius');

/** Nothing said of anything. */
export const NO_SHOP: Shop = {
  format: SHOP_FORMAT,
  version: SHOP_VERSION,
  tools: [],
  stock: [],
  rates: [],
  squeezes: [],
};

/** Kinds at hand, in the order of the list: as the shop says, else those of the job and a dial indicator. */
export function kindsAtHand(shop: Shop | null, job: Job): GaugeType[] {
  const had = new Set((shop?.gauges ?? job.gauges).map((gauge) => kindOfGauge(gauge).type));
  if (shop?.gauges === undefined) had.add('indicator');
  return SHOP_KINDS.map(({ type }) => type).filter((type) => had.has(type));
}

/** The shop with a kind put at hand or taken away; what was taken for granted till then is said along with it. */
export function withKind(shop: Shop | null, job: Job, type: GaugeType, at: boolean): Shop {
  const old = shop ?? NO_SHOP;
  const said = old.gauges ?? kindsAtHand(old, job).map(generic);
  const others = said.filter((gauge) => kindOfGauge(gauge).type !== type);
  const gauges = !at ? others : others.length === said.length ? [...said, generic(type)] : said;
  return { ...old, gauges };
}

/** One of a kind, with the typical figures; the shop has one such at most, so its kind is name enough. */
function generic(type: GaugeType): Gauge {
  const { kind, name } = gaugeKind(type);
  return { id: type, kind, type, name };
}

/** The first of the shop's gauges of a kind that has a name or figures of its own, which a tick does not bring back. */
export function ownGauge(shop: Shop | null, type: GaugeType): Gauge | undefined {
  const plain = generic(type);
  return shop?.gauges?.find((gauge) => {
    const { id: _, ...rest } = gauge;
    const { id: __, ...usual } = plain;
    return kindOfGauge(gauge).type === type && JSON.stringify(rest) !== JSON.stringify(usual);
  });
}

const FROM_SHOP = 'shop:';

/** How a reading's gauge is called that the shop has and the job does not hold yet. */
export function shopGaugeId({ id }: Gauge): string {
  return `${FROM_SHOP}${id}`;
}

/**
 * The job with that gauge among its own, under an id of its own.
 *
 * @param gauge a job's gauge, or one of the shop as `shopGaugeId` calls it; any other is handed back as it came
 */
export function withShopGauge(
  job: Job,
  shop: Shop | null,
  gauge: string,
): { readonly job: Job; readonly gauge: string } {
  const found = shop?.gauges?.find((one) => shopGaugeId(one) === gauge);
  if (found === undefined) return { job, gauge };
  const taken = { ...found, id: idSource(job)('g') };
  return { job: { ...job, gauges: [...job.gauges, taken] }, gauge: taken.id };
}
