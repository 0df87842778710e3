/**
 * What other sizes of target would cost and leave, of the survey on the bench: asked of the worker once for all sizes,
 * and again only when something else than the chosen size has changed. No React; `useTradeOff` is for views.
 */
import type { TradeOff } from '../evaluate/tradeOff.ts';
import type { Feature } from '../job/schema.ts';
import { lengthMm } from '../job/units.ts';
import { asideStore, type Matter } from './aside.ts';

export const { use: useTradeOff, want: wantTradeOff } = asideStore('sizes', {
  more: {},
  byShop: false,
  stands: (was, now, shown) => sameMatter(was, now) && (shown === null || holds(shown, now.bore)),
});

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
