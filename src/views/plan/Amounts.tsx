/** How much comes off in all, how sure that is, and the cautions that belong to taking it off by hand. */
import { memo } from 'react';
import type { Removal, WearSurface } from '../../bore/types.ts';
import { amountWords } from '../../figures/amountWords.ts';
import { Figure } from '../parts/Figure.tsx';

export interface AmountsProps {
  readonly removal: Removal;
  readonly surface: WearSurface;
}

export const Amounts = memo(function Amounts({ removal, surface }: AmountsProps) {
  const { sure, likely, possible, volume } = amountWords(removal);
  if (!(removal.volume > 0)) {
    return (
      <p className="amounts">
        Nothing is likely to stand proud of this target: there is nothing to grind.{' '}
        {removal.possibleMass > 0 && (
          <>
            Within the give-or-take of these readings up to <Figure text={possible} /> may stand.
          </>
        )}
      </p>
    );
  }
  const shares = areaShares(removal, surface);
  return (
    <p className="amounts">
      {sure === null ? (
        <b>No metal is sure to come off</b>
      ) : (
        <>
          Surely <Figure text={sure} tone="take-off" /> to come off
        </>
      )}
      , likely <Figure text={likely} tone="take-off" />, possibly up to <Figure text={possible} /> (
      <Figure text={volume} /> of plain steel at the likely). It stands proud surely on{' '}
      <Figure text={percent(shares.sure)} /> of the wall, likely on{' '}
      <Figure text={percent(shares.likely)} />, possibly on{' '}
      <Figure text={percent(shares.possible)} />.
      {sure === null &&
        ' All of it lies within the give-or-take of these readings: measure again, or with a finer gauge, before anything is ground.'}
    </p>
  );
});

/** Shares of the wall, end rows counted half, where metal stands proud. */
function areaShares(
  { likely, sure, possible }: Removal,
  { grid: { theta, z } }: WearSurface,
): { likely: number; sure: number; possible: number } {
  const last = z.length - 1;
  let all = 0;
  const found = { likely: 0, sure: 0, possible: 0 };
  for (let k = 0; k < likely.length; k += 1) {
    const row = Math.floor(k / theta.length);
    const share = (z[Math.min(row + 1, last)]! - z[Math.max(row - 1, 0)]!) / 2;
    all += share;
    if (likely[k]! > 0) found.likely += share;
    if (sure[k]! > 0) found.sure += share;
    if (possible[k]! > 0) found.possible += share;
  }
  const of = (part: number) => part / all;
  return { likely: of(found.likely), sure: of(found.sure), possible: of(found.possible) };
}

function percent(share: number): string {
  const whole = Math.round(share * 100);
  return whole === 0 && share > 0 ? 'less than 1 %' : `${whole} %`;
}
