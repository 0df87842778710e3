/** Going to the cell of a reading that is worth taking. */
import { type Offered, offerPlace, placeInTable } from '../job/offerPlace.ts';
import { withShopGauge } from '../job/shopGauges.ts';
import { attempt } from './attempt.ts';
import { usePage } from './page.ts';
import { useSession } from './session.ts';
import { shopStore } from './shop.ts';
import { tableNow } from './tables.ts';
import { commit } from './typing.ts';

/**
 * Puts row, column and gauge into the table where it lacks them (one of the shop's into the job), and the session on
 * the cell.
 * @returns the cell's name in the table, or null and one sentence why not
 */
export function goToWanted(wanted: Offered): { cell: string | null; why: string | null } {
  commit();
  const laid = tableNow();
  if (laid === null) return { cell: null, why: null };
  const { bore, survey } = laid.bench;
  const why = attempt((job) => {
    const ready = withShopGauge(job, shopStore.getState().shop, wanted.gauge);
    return offerPlace(ready.job, bore.id, survey.id, { ...wanted, gauge: ready.gauge });
  });
  const now = tableNow();
  // The cell has to be there to be gone to.
  usePage.getState().change({ pointsTable: true });
  const cell = now === null ? null : placeInTable(now.table, wanted);
  if (cell === null) return { cell: null, why };
  const { theta, z } = wanted;
  useSession.getState().look({ cell, cursor: { theta, z }, draft: null });
  return { cell: `${cell.row}-${cell.column}`, why };
}
