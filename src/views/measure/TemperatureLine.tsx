/** How warm part and gauge were while this survey was read, what metal the part is of, and what that changed. */
import { temperatureRemarks } from '../../figures/temperatureWords.ts';
import { setBossMaterial, setTemperature } from '../../job/edits.ts';
import type { Survey } from '../../job/schema.ts';
import {
  type Degrees,
  METAL_NAMES,
  metalOf,
  readTemperature,
  temperatureFacts,
} from '../../job/temperature.ts';
import type { Bench } from '../../store/bench.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { Remarks } from '../parts/Remarks.tsx';

const DEGREES = [
  { value: 'F', text: '°F' },
  { value: 'C', text: '°C' },
] as const;

type Temperature = NonNullable<Survey['temperature']>;

export function TemperatureLine({ bench }: { readonly bench: Bench }) {
  const { job, bore, survey } = bench;
  const edit = useJob((state) => state.edit);
  const facts = temperatureFacts(bore, survey);
  const unit = survey.temperature?.unit ?? (job.units === 'in' ? 'F' : 'C');
  const set = (next: Temperature | undefined) =>
    edit((now) => setTemperature(now, bore.id, survey.id, next));
  return (
    <>
      <p className="facts">
        While these were read the part was at{' '}
        <Degree which="part" unit={unit} given={survey.temperature} onSet={set} /> and the gauge at{' '}
        <Degree which="gauge" unit={unit} given={survey.temperature} onSet={set} />{' '}
        <span className="unbroken">
          <Choice
            label="Degrees"
            value={unit}
            options={DEGREES}
            onChoose={(chosen) => set({ ...survey.temperature, unit: chosen })}
          />
          {facts === null && '.'}
        </span>
        {facts !== null && <MetalChoice bench={bench} />}
      </p>
      <Remarks remarks={temperatureRemarks(facts, job.units)} />
    </>
  );
}

interface DegreeProps {
  readonly which: 'part' | 'gauge';
  readonly unit: Degrees;
  readonly given: Temperature | undefined;
  onSet(next: Temperature | undefined): void;
}

function Degree({ which, unit, given, onSet }: DegreeProps) {
  const text = given?.[which] ?? '';
  const read = readTemperature(text, unit);
  return (
    <Field
      label={`Temperature of the ${which}`}
      value={text}
      placeholder="not taken"
      fault={read.ok || read.why === '' ? null : read.why}
      onEnter={(typed) => {
        const { [which]: _, ...others } = given ?? { unit };
        const next: Temperature =
          typed === '' ? others : { ...others, [which]: typed.slice(0, 20) };
        onSet(next.part === undefined && next.gauge === undefined ? undefined : next);
      }}
    />
  );
}

/** The part's metal: what expands. A text of the repairer's own stays among the choices. */
function MetalChoice({ bench: { bore } }: { readonly bench: Bench }) {
  const edit = useJob((state) => state.edit);
  const own = bore.boss?.material ?? '';
  const names = own === '' || METAL_NAMES.includes(own) ? METAL_NAMES : [own, ...METAL_NAMES];
  return (
    <>
      ; it is of{' '}
      <span className="unbroken">
        <Choice
          label="Metal of the part"
          value={own === '' ? metalOf(undefined).name : own}
          options={names.map((name) => ({ value: name, text: name }))}
          onChoose={(name) => edit((now) => setBossMaterial(now, bore.id, name))}
        />
        .
      </span>
    </>
  );
}
