/** Sheets that shims are cut from: those of the shop, typed in a row, or the usual series. */
import { useState } from 'react';
import { withSheets } from '../../job/shopTools.ts';
import { inUnits } from '../../job/units.ts';
import { shopStore } from '../../store/shop.ts';
import { Field } from '../parts/Field.tsx';
import type { PartProps } from './partProps.ts';

export function SheetsAtHand({ bench: { job }, found }: PartProps) {
  const { sheets, from } = found.facts.stock;
  const [fault, setFault] = useState<string | null>(null);
  const decimals = job.units === 'in' ? 4 : 3;
  const plain = (mm: number) => String(Number(inUnits(mm, job.units).toFixed(decimals)));
  const shown = [...sheets].sort((a, b) => a - b);
  return (
    <p className="facts">
      Sheets at hand, thick{' '}
      <Field
        label="Thicknesses of the sheets at hand"
        value={shown.map(plain).join(' ')}
        usual={from === 'series'}
        kind="words"
        fault={fault}
        onEnter={(text) => {
          const { shop, change } = shopStore.getState();
          const changed = withSheets(shop, text, job.units);
          setFault('why' in changed ? changed.why : null);
          if ('shop' in changed) change(() => changed.shop);
        }}
      />{' '}
      {job.units}
      {from === 'series'
        ? ': a usual set, until you say what the shop has.'
        : ': of this shop, for every job. Empty it for the usual set.'}
    </p>
  );
}
