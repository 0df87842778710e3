/**
 * What other sizes of target would cost and leave, of the survey on the bench: asked of the worker once for all sizes,
 * and again only when something else than the chosen size has changed. No React; `useTradeOff` is for views.
 */
import { create } from 'zustand';
import type { TradeOff } from '../evaluate/tradeOff.ts';
import type { Feature, Job, Survey } from '../job/schema.ts';
import { lengthMm } from '../job/units.ts';
import { askAside, asker } from './bridge.ts';

/** What a trade-off was worked out of. */
interface Matter {
  readonly job: Job;
  readonly bore: Feature;
  readonly survey: Survey;
}

interface TradeOffState {
  readonly of: Matter | null;
  readonly shown: TradeOff | null;
}

export const useTradeOff = create<TradeOffState>()(() => ({ of: null, shown: null }));

/** The newest that was asked about; null: nothing is out. */
let asked: Matter | null = null;

/** Sees to it that the sizes of this survey are there, or on their way. */
export function wantTradeOff(matter: Matter): void {
  const { of, shown } = useTradeOff.getState();
  if (asked !== null && sameMatter(asked, matter)) return;
  if (of !== null && sameMatter(of, matter) && (shown === null || holds(shown, matter.bore))) {
    return;
  }
  asked = matter;
  const { job, bore, survey } = matter;
  askAside('sizes', job, { bore: bore.id, survey: survey.id }, (sizes) => {
    asked = null;
    useTradeOff.setState({ of: matter, shown: sizes });
  });
}

/** True where these sizes are of that survey, though perhaps not of its newest readings. */
export function isOf(of: Matter | null, { job, bore, survey }: Matter): boolean {
  return (
    of !== null && of.job.id === job.id && of.bore.id === bore.id && of.survey.id === survey.id
  );
}

/** Everything but the chosen size is the very same: edits share what they leave alone. */
function sameMatter(a: Matter, b: Matter): boolean {
  const { gauges, units } = a.job;
  if (gauges !== b.job.gauges || units !== b.job.units || a.survey !== b.survey) return false;
  if (!alikeBut(a.bore, b.bore, ['decisions', 'surveys', 'issued'])) return false;
  return (
    Object.is(a.bore.decisions.centre, b.bore.decisions.centre) &&
    Object.is(a.bore.decisions.between, b.bore.decisions.between)
  );
}

function alikeBut<T extends object>(a: T, b: T, but: readonly (keyof T)[]): boolean {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)] as (keyof T)[]);
  return [...keys].every((key) => but.includes(key) || Object.is(a[key], b[key]));
}

/** True where a size decided by hand lies within those that were worked out, or none is decided. */
function holds({ range }: TradeOff, { decisions }: Feature): boolean {
  const decided = lengthMm(decisions.target);
  if (!(decided > 0)) return true;
  return decided > range.least - range.step / 2 && decided < range.greatest + range.step / 2;
}

asker.store.subscribe((state, before) => {
  // A worker that broke answers nothing more.
  if (state.failed !== null && before.failed === null) asked = null;
});
