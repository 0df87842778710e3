/** A new job asks three things, then gives the table. */
import { type FormEvent, useState } from 'react';
import { newJob } from '../job/edits.ts';
import { gaugeKind, gaugeKindsFor } from '../job/gauges.ts';
import type { GaugeType, Units } from '../job/schema.ts';
import { readLength } from '../job/units.ts';
import { show } from '../store/files.ts';
import { jobStore } from '../store/job.ts';
import { newId } from '../store/newId.ts';
import { usePage } from '../store/page.ts';
import { useJob } from '../store/useJob.ts';
import { Choice } from './parts/Choice.tsx';
import { LengthField } from './parts/LengthField.tsx';
import { today } from './today.ts';

const UNITS: readonly { value: Units; text: string }[] = [
  { value: 'in', text: 'inches' },
  { value: 'mm', text: 'millimetres' },
];

export function NewJob() {
  const [units, setUnits] = useState<Units>(jobStore.getState().job?.units ?? 'in');
  const [gauge, setGauge] = useState<GaugeType>('telescoping');
  const [length, setLength] = useState('');
  const [outside, setOutside] = useState('');
  const change = usePage((page) => page.change);
  const canGoBack = useJob((state) => state.job !== null);
  const good = (text: string) => readLength({ text, unit: units }).ok;
  const [asked, setAsked] = useState(false);
  const lacks = good(length)
    ? good(outside)
      ? null
      : 'the bushing’s outside diameter'
    : 'the length of the bore';
  const begin = (event: FormEvent) => {
    event.preventDefault();
    setAsked(lacks !== null);
    if (lacks !== null) return;
    const made = today();
    show(newJob({ units, gauge, length, bushingOutside: outside, id: newId(), made }));
    // The first cell takes the first reading at once.
    requestAnimationFrame(() => document.querySelector<HTMLElement>('[data-cell="0-0"]')?.focus());
  };
  return (
    <form className="new-job" aria-labelledby="new-job-head" onSubmit={begin}>
      <h2 id="new-job-head">New job</h2>
      <p className="facts">
        Sizes are in{' '}
        <Choice<Units> label="Units" value={units} options={UNITS} onChoose={setUnits} />.
      </p>
      <p className="facts">
        A bore{' '}
        <LengthField
          label="Length of the bore"
          typed={length === '' ? undefined : { text: length, unit: units }}
          placeholder={units === 'in' ? '1 3/4' : '45'}
          units={units}
          onEnter={(typed) => setLength(typed?.text ?? '')}
        />{' '}
        long, for a bushing of{' '}
        <LengthField
          label="Outside diameter of the bushing, across"
          typed={outside === '' ? undefined : { text: outside, unit: units }}
          placeholder={units === 'in' ? '2.0005' : '50.80'}
          units={units}
          onEnter={(typed) => setOutside(typed?.text ?? '')}
        />{' '}
        across, measured with{' '}
        <Choice<GaugeType>
          label="Gauge"
          value={gauge}
          options={gaugeKindsFor('bore').map(({ type, name }) => ({ value: type, text: name }))}
          onChoose={setGauge}
        />
        .
      </p>
      <p className="soft">{gaugeKind(gauge).blindTo}</p>
      {asked && lacks !== null && (
        <p className="fault" role="status">
          Give {lacks} first: the table and the map need it.
        </p>
      )}
      <p className="new-job-buttons">
        <button type="submit" className="plain-button" data-main="true">
          To the table
        </button>
        {canGoBack && (
          <button type="button" className="plain-button" onClick={() => change({ newJob: false })}>
            back to the open job
          </button>
        )}
      </p>
      <p className="soft">
        Mark 12 o’clock and face A with a punch before anything is stripped. The clock is as you see
        it looking in at face A.
      </p>
    </form>
  );
}
