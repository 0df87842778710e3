/** The pin that runs in a bore: where it runs there, as surveyed, else as the list of its sizes has it. */
import { holeSizes } from '../../assembly/running.ts';
import { listSize } from '../../bore/partSize.ts';
import type { WearSurface } from '../../bore/types.ts';
import type { BoreEvaluation } from '../../evaluate.ts';
import { gaugeKind } from '../../job/gauges.ts';
import { pinFacts } from '../../job/pinFacts.ts';
import type { Feature, Job } from '../../job/schema.ts';
import { lengthMm } from '../../job/units.ts';
import { stretchOf } from './stretch.ts';

/** Sizes across, mm. */
export interface PinSizes {
  /** `surveyed`: a pin of the job with readings; `list`: sizes typed at the bore; `other-list`: at another bore of the pin. */
  readonly from: 'surveyed' | 'list' | 'other-list';
  /** Of the pin that was surveyed, or of the bore that has the list. */
  readonly name: string;
  readonly least: number;
  readonly mean: number;
  readonly greatest: number;
  /** Two standard deviations of the least and of the greatest, the greater of both. */
  readonly give: number;
  /** Sizes in the list; NaN: surveyed. */
  readonly places: number;
}

/**
 * @param parts what else was measured in the job
 * @returns null where nobody measured a pin
 */
export function pinOf(
  job: Job,
  feature: Feature,
  parts: readonly BoreEvaluation[],
): PinSizes | null {
  return surveyed(job, feature, parts) ?? listed(feature, 'list') ?? elsewhere(job, feature);
}

/** The only list of the job, where it has no more than one pin: of several nobody could say which runs here. */
function elsewhere({ features }: Job, feature: Feature): PinSizes | null {
  const pins = features.filter(({ kind }) => kind === 'pin');
  const lists = features.flatMap((one) =>
    one.kind === 'bore' && one.id !== feature.id ? (listed(one, 'other-list') ?? []) : [],
  );
  return pins.length < 2 && lists.length === 1 ? lists[0]! : null;
}

function listed(feature: Feature, from: 'list' | 'other-list'): PinSizes | null {
  const typed = (feature.pin?.diameters ?? []).map((d) => lengthMm(d)).filter((mm) => mm > 0);
  const size = listSize(typed, 2 * gaugeKind('outside-micrometer').repeatability);
  if (size === null) return null;
  const { least, mean, greatest } = size;
  const sizes = { least: least.mm, mean: mean.mm, greatest: greatest.mm };
  return { from, name: feature.name, ...sizes, give: least.give, places: typed.length };
}

/** Of the stretch that is said to run here, else of the whole pin. */
function surveyed(job: Job, feature: Feature, parts: readonly BoreEvaluation[]): PinSizes | null {
  const pins = parts.flatMap(({ id, name, kind, surveys, facts }) => {
    const surface = surveys.findLast((one) => one.surface !== null)?.surface ?? null;
    const part = job.features.find((one) => one.id === id);
    if (kind !== 'pin' || surface === null || part === undefined) return [];
    const { lands } = pinFacts(job, part, facts.length.mm);
    return [{ name, surface, land: lands.find(({ runsIn }) => runsIn === feature.id) }];
  });
  const bores = job.features.filter(({ kind }) => kind === 'bore');
  const nth = pins.length === bores.length ? bores.findIndex(({ id }) => id === feature.id) : 0;
  const one = pins.find(({ land }) => land !== undefined) ?? pins[nth];
  if (one === undefined) return null;
  return sizesOf(one.name, one.surface, one.land ?? { from: 0, to: Number.POSITIVE_INFINITY });
}

function sizesOf(
  name: string,
  surface: WearSurface,
  land: { readonly from: number; readonly to: number },
): PinSizes | null {
  const found = stretchOf(surface, land);
  const sizes = found && holeSizes(found.hole);
  if (sizes === null) return null;
  const { least, greatest, mean } = sizes;
  return {
    from: 'surveyed',
    name,
    least: least.mm,
    mean,
    greatest: greatest.mm,
    give: found!.give,
    places: Number.NaN,
  };
}
