/** The shop's log of squeezes with heat: one put in, one taken out. All across; what is not known is an empty text. */
import type { Typed, Units } from './schema.ts';
import type { Shop } from './shop.ts';
import { NO_SHOP } from './shopGauges.ts';
import { inUnits } from './units.ts';

export type LoggedSqueeze = Shop['squeezes'][number];

/** What a squeeze was and brought, mm across; NaN: not known. */
export interface SqueezeFigures {
  readonly moved: number;
  readonly came: number;
  readonly meanBefore: number;
  readonly meanAfter: number;
  /** By clock position; none where only two ways across were read. */
  readonly across: readonly {
    readonly clock: string;
    readonly before: number;
    readonly after: number;
  }[];
}

/** As the log keeps it: a ten-thousandth of an inch or a micrometre is finer than any gauge that it is read with. */
export function squeezeEntry(
  { moved, came, meanBefore, meanAfter, across }: SqueezeFigures,
  units: Units,
  when: string,
  note: string,
): LoggedSqueeze {
  const typed = (mm: number): Typed => ({
    text: Number.isFinite(mm) ? inUnits(mm, units).toFixed(units === 'in' ? 4 : 3) : '',
    unit: units,
  });
  return {
    when,
    asked: typed(moved),
    came: typed(came),
    meanBefore: typed(meanBefore),
    meanAfter: typed(meanAfter),
    ...(across.length === 0
      ? {}
      : {
          across: across.map(({ clock, before, after }) => ({
            clock,
            before: typed(before),
            after: typed(after),
          })),
        }),
    note: note.slice(0, 200),
  };
}

export function withSqueeze(shop: Shop | null, entry: LoggedSqueeze): Shop {
  const old = shop ?? NO_SHOP;
  return { ...old, squeezes: [...old.squeezes, entry] };
}

/** @param place in the log, from 0 */
export function withoutSqueeze(shop: Shop | null, place: number): Shop {
  const old = shop ?? NO_SHOP;
  return { ...old, squeezes: old.squeezes.filter((_, i) => i !== place) };
}

/** Whether the same squeeze of the same bore stands there, whenever it was put in. */
export function isLogged(shop: Shop | null, entry: LoggedSqueeze): boolean {
  const told = ({ when: _, ...rest }: LoggedSqueeze) => JSON.stringify(rest);
  return shop?.squeezes.some((one) => told(one) === told(entry)) ?? false;
}
