/** Whether the readings of a comparator are sizes or what its needle shows; where it was zeroed, and whether that held. */
import { useState } from 'react';
import { isComparator, zeroMoved } from '../../job/comparator.ts';
import { setGauge, setZeroAfter } from '../../job/edits.ts';
import { kindOfGauge, readingSd } from '../../job/gauges.ts';
import type { Gauge } from '../../job/schema.ts';
import { gaugeOf } from '../../job/sizes.ts';
import { formatAcross, formatLength } from '../../job/units.ts';
import type { Bench } from '../../store/bench.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';

const HOW = [
  { value: 'size', text: 'the size' },
  { value: 'needle', text: 'what the needle shows' },
] as const;
const NEEDLE = [
  { value: 'larger', text: 'larger' },
  { value: 'smaller', text: 'smaller' },
] as const;

export function ComparatorLine({ bench }: { readonly bench: Bench }) {
  const { job, bore, survey } = bench;
  const edit = useJob((state) => state.edit);
  // Asked for while neither a new size nor a bushing says at what it will have been zeroed.
  const [asked, setAsked] = useState(false);
  const gauge = gaugeOf(job.gauges, survey.plan.gauge);
  if (gauge === undefined) return null;
  const needle = isComparator(gauge);
  if (!needle && kindOfGauge(gauge).type !== 'dial-bore') return null;
  const likely = bore.nominal ?? bore.bushings[0]?.outside[0];
  const choose = (how: 'size' | 'needle') => {
    setAsked(how === 'needle');
    const zeroedAt = how === 'needle' ? likely : undefined;
    edit((now) => setGauge(now, gauge.id, { zeroedAt }));
  };
  return (
    <p className="facts">
      Typed is{' '}
      <Choice
        label="What is typed of this gauge"
        value={needle || asked ? 'needle' : 'size'}
        options={HOW}
        onChoose={choose}
      />
      {(needle || asked) && (
        <>
          , over (+) or under (−) the{' '}
          <LengthField
            label="Size at which the gauge was zeroed, across"
            typed={gauge.zeroedAt}
            placeholder="which size"
            units={job.units}
            onEnter={(zeroedAt) => edit((now) => setGauge(now, gauge.id, { zeroedAt }))}
          />{' '}
          across at which it was zeroed; a needle turning clockwise means that the hole is{' '}
          <Choice
            label="What a needle turning clockwise means"
            value={gauge.needle ?? 'larger'}
            options={NEEDLE}
            onChoose={(way) => edit((now) => setGauge(now, gauge.id, { needle: way }))}
          />
        </>
      )}
      .{needle && <ZeroAfter bench={bench} gauge={gauge} />}
    </p>
  );
}

/** What it showed back on that size at the end, and by how much its zero had moved. */
function ZeroAfter({ bench, gauge }: { readonly bench: Bench; readonly gauge: Gauge }) {
  const { job, bore, survey } = bench;
  const edit = useJob((state) => state.edit);
  const shown = survey.zeroAfter?.find((one) => one.gauge === gauge.id)?.shown;
  const unit = job.units === 'in' ? 'thou' : 'mm';
  const moved = Math.abs(zeroMoved(gauge, shown));
  const repeats = readingSd(gauge).mm;
  return (
    <>
      {' '}
      Back on that size at the end it showed{' '}
      <Field
        label="What the gauge showed at the end, back on the size at which it was zeroed"
        value={shown?.text ?? ''}
        placeholder="not checked"
        fault={
          shown !== undefined && Number.isNaN(moved) ? 'type what it showed, such as +0.2' : null
        }
        onEnter={(text) =>
          edit((now) => setZeroAfter(now, bore.id, survey.id, gauge.id, { text, unit }))
        }
      />{' '}
      {shown?.unit ?? unit}
      {moved <= repeats ? ', which is within what it repeats to.' : '.'}
      {moved > repeats && (
        <span className="fault">
          Its zero moved by {formatAcross(moved, job.units)}, more than it repeats to (
          {formatLength(repeats, job.units)}): zero it again, and read the first and the last place
          once more.
        </span>
      )}
    </>
  );
}
