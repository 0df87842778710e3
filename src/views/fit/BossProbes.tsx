/** How warm the boss was measured, at up to four clock positions. */
import { setBossProbe } from '../../job/edits.ts';
import { degreesOf } from '../../job/heatFacts.ts';
import type { BossProbe } from '../../job/heatSchema.ts';
import { MOST } from '../../job/schema.ts';
import { useJob } from '../../store/useJob.ts';
import { Field } from '../parts/Field.tsx';
import type { Worked } from '../plan/worked.ts';
import { WarmField } from './heatFields.tsx';

/** Four sides of a boss, in the order in which they are offered. */
const OFFERED = ['12', '3', '6', '9'];

export function BossProbes({ bench: { job, bore } }: { readonly bench: Worked }) {
  const edit = useJob((state) => state.edit);
  const unit = degreesOf(job.units);
  const probes = bore.decisions.fit?.heat?.probes ?? [];
  const set = (place: number, probe: BossProbe | null) =>
    edit((now) => setBossProbe(now, bore.id, place, probe));
  const taken = new Set(probes.map(({ clock }) => clock));
  const next = OFFERED.find((clock) => !taken.has(clock)) ?? '12';
  return (
    <p className="facts">
      Boss as measured, seen looking in at face A:{' '}
      {probes.map((probe, place) => (
        <span key={place} className="boss-probe">
          <Field
            label={`Clock position of boss temperature ${place + 1}`}
            value={probe.clock}
            placeholder="clock"
            onEnter={(clock) =>
              set(
                place,
                clock.trim() === '' ? null : { ...probe, clock: clock.slice(0, MOST.clock) },
              )
            }
          />{' '}
          o’clock{' '}
          <WarmField
            label={`Boss temperature ${place + 1}`}
            warmth={probe.at}
            unit={unit}
            onEnter={(at) => set(place, at === undefined ? null : { ...probe, at })}
          />
          ;{' '}
        </span>
      ))}
      {probes.length < MOST.probes && (
        <span className="boss-probe">
          {next} o’clock{' '}
          <WarmField
            label={`Boss temperature at ${next} o’clock`}
            warmth={undefined}
            unit={unit}
            onEnter={(at) => at !== undefined && set(probes.length, { clock: next, at })}
          />{' '}
          (up to four places; the mean counts instead of the figure above)
        </span>
      )}
    </p>
  );
}
