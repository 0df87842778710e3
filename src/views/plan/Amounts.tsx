/** How much comes off in all, how sure that is, and the cautions that belong to taking it off by hand. */
import type { Removal, WearSurface } from '../../bore/types.ts';
import { Figure } from '../parts/Figure.tsx';
import type { Worked } from './worked.ts';

export interface AmountsProps {
  readonly bench: Worked;
  readonly removal: Removal;
  readonly surface: WearSurface;
}

export function Amounts({ removal, surface }: AmountsProps) {
  if (!(removal.volume > 0)) {
    return (
      <p className="amounts">Nothing stands proud of this target: there is nothing to grind.</p>
    );
  }
  const shares = areaShares(removal, surface);
  return (
    <p className="amounts">
      Take off <Figure text={grams(removal.mass)} tone="take-off" /> in all (
      <Figure text={cubic(removal.volume)} /> of plain steel), from{' '}
      <Figure text={percent(shares.likely)} /> of the wall.{' '}
      {shares.sure > 0 ? (
        <>
          On <Figure text={percent(shares.sure)} /> of it metal is sure to stand proud; elsewhere it
          is likely, within the give-or-take of these readings.
        </>
      ) : (
        <>
          <b>None of it is sure:</b> all of it lies within the give-or-take of these readings.
          Measure again, or with a finer gauge, before anything is ground.
        </>
      )}
    </p>
  );
}

/** Shares of the wall, end rows counted half, where metal stands proud: likely, and even at two sigma. */
function areaShares(
  { likely, sure }: Removal,
  { grid: { theta, z } }: WearSurface,
): { likely: number; sure: number } {
  const last = z.length - 1;
  let all = 0;
  const found = { likely: 0, sure: 0 };
  for (let k = 0; k < likely.length; k += 1) {
    const row = Math.floor(k / theta.length);
    const share = (z[Math.min(row + 1, last)]! - z[Math.max(row - 1, 0)]!) / 2;
    all += share;
    if (likely[k]! > 0) found.likely += share;
    if (sure[k]! > 0) found.sure += share;
  }
  return { likely: found.likely / all, sure: found.sure / all };
}

function percent(share: number): string {
  const whole = Math.round(share * 100);
  return whole === 0 && share > 0 ? 'less than 1 %' : `${whole} %`;
}

function grams(mass: number): string {
  return `${Number(mass.toPrecision(2))} g`;
}

function cubic(volume: number): string {
  return `${Number(volume.toPrecision(2))} mm³`;
}
