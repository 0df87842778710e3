/** What the gauge in hand is called and how well it reads: its own figures, or those typical of its kind. */
import { useState } from 'react';
import { removeGauge, setGauge, setPlanGauge } from '../../job/edits.ts';
import { type GaugeFigures as Figures, gaugeFigures, kindOfGauge } from '../../job/gauges.ts';
import type { Gauge, Job, Typed, Units } from '../../job/schema.ts';
import { inUnits } from '../../job/units.ts';
import { attempt } from '../../store/attempt.ts';
import type { Bench } from '../../store/bench.ts';
import { tellTakenOut } from '../../store/takeOut.ts';
import { useJob } from '../../store/useJob.ts';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Words } from '../parts/Words.tsx';

export interface GaugeFiguresProps {
  readonly job: Job;
  readonly gauge: Gauge;
}

/** Decimals of each typical figure, in inches and in millimetres: what it is worth, and no more. */
const DECIMALS: Readonly<Record<keyof Figures, Readonly<Record<Units, number>>>> = {
  repeatability: { in: 4, mm: 3 },
  resolution: { in: 4, mm: 4 },
  reach: { in: 1, mm: 0 },
};

/** How well one reading repeats: the end of the sentence that says with what is measured. */
export function Repeats({ job, gauge }: GaugeFiguresProps) {
  return (
    <>
      <Words text="; one reading repeats to about " />
      <FigureField
        job={job}
        gauge={gauge}
        figure="repeatability"
        label="Repeatability of the gauge, one standard deviation"
      />{' '}
      or nearer, two times out of three.{' '}
      <span className="soft">
        <Words text={kindOfGauge(gauge).blindTo} />
      </span>
    </>
  );
}

/** Its name, its steps and its reach; one that nothing was read with can go. */
export function GaugeFigures({ bench, gauge }: { readonly bench: Bench; readonly gauge: Gauge }) {
  const { job, bore, survey } = bench;
  const other = job.gauges.find(({ id }) => id !== gauge.id);
  const edit = useJob((state) => state.edit);
  const [why, setWhy] = useState<string | null>(null);
  return (
    <p className="facts">
      This gauge is called{' '}
      <Field
        label="Name of this gauge"
        kind="words"
        value={gauge.name}
        onEnter={(name) => edit((now) => setGauge(now, gauge.id, { name }))}
      />
      ; it shows steps of{' '}
      <FigureField job={job} gauge={gauge} figure="resolution" label="Steps that the gauge shows" />{' '}
      and gets{' '}
      <FigureField
        job={job}
        gauge={gauge}
        figure="reach"
        label="How deep from its face the gauge gets"
      />{' '}
      deep
      {other !== undefined && (
        <>
          ;{' '}
          <button
            type="button"
            className="link-button"
            onClick={() => {
              const refusal = attempt((now) =>
                removeGauge(setPlanGauge(now, bore.id, survey.id, other.id), gauge.id),
              );
              setWhy(refusal);
              if (refusal === null) tellTakenOut(`“${gauge.name}” is off the list of gauges.`);
            }}
          >
            take it off the list
          </button>
        </>
      )}
      .
      {why !== null && (
        <span className="fault" role="status">
          {' '}
          {why}
        </span>
      )}
    </p>
  );
}

interface FigureFieldProps extends GaugeFiguresProps {
  readonly figure: keyof Figures;
  readonly label: string;
}

function FigureField({ job, gauge, figure, label }: FigureFieldProps) {
  const edit = useJob((state) => state.edit);
  const { mm, stated } = gaugeFigures(gauge)[figure];
  const usual: Typed = {
    text: inUnits(mm, job.units).toFixed(DECIMALS[figure][job.units]),
    unit: job.units,
  };
  return (
    <>
      <LengthField
        label={label}
        typed={gauge[figure]}
        usual={usual}
        units={job.units}
        onEnter={(typed) => edit((now) => setGauge(now, gauge.id, { [figure]: typed }))}
      />
      {!stated && ' (typical)'}
    </>
  );
}
