/** With what, from which face, in what order and unit the readings are typed: sentences with choices in them. */
import { addGauge, setPlanFace, setPlanGauge } from '../../job/edits.ts';
import { type GaugeKind, gaugeKind, gaugeKindsFor, kindOfGauge } from '../../job/gauges.ts';
import type { Feature, GaugeType, Job, Survey, Unit, Units } from '../../job/schema.ts';
import { gaugeOf } from '../../job/sizes.ts';
import type { Bench } from '../../store/bench.ts';
import { useSession } from '../../store/session.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { GaugeFigures, Repeats } from './GaugeFigures.tsx';
import { keypadWanted } from './keypadWanted.ts';

export function MeasuredWith({ bench }: { readonly bench: Bench }) {
  const { job, bore, survey } = bench;
  const edit = useJob((state) => state.edit);
  const gauge = gaugeOf(job.gauges, survey.plan.gauge);
  return (
    <>
      <p className="facts">
        Measured with{' '}
        <Choice
          label="Gauge"
          value={survey.plan.gauge}
          options={gaugeOptions(job, bore, survey)}
          onChoose={(chosen) => edit((now) => withGauge(now, bore.id, survey.id, chosen))}
        />{' '}
        from{' '}
        <Choice
          label="Face that depths and clock are taken from"
          value={survey.plan.face}
          options={FACES}
          onChoose={(face) => edit((now) => setPlanFace(now, bore.id, survey.id, face))}
        />
        {gauge !== undefined && <Repeats job={job} gauge={gauge} />}
      </p>
      {gauge !== undefined && <GaugeFigures key={gauge.id} bench={bench} gauge={gauge} />}
    </>
  );
}

const FACES = [
  { value: 'A', text: 'face A' },
  { value: 'B', text: 'face B, clock mirrored' },
] as const;

/**
 * Of the gauges that get at such a part: the job's own, the generic ones that it does not have yet, and one more of those
 * that it has.
 */
function gaugeOptions(
  job: Job,
  { kind }: Feature,
  { plan }: Survey,
): { value: string; text: string }[] {
  const kinds = gaugeKindsFor(kind);
  const own = job.gauges
    .filter((one) => one.id === plan.gauge || kinds.includes(kindOfGauge(one)))
    .map(({ id, name }) => ({ value: id, text: name }));
  const had = new Set(job.gauges.map((gauge) => kindOfGauge(gauge).type));
  const option = (before: string) => (one: GaugeKind) => ({
    value: `new:${one.type}`,
    text: `${before}${one.name}`,
  });
  const others = kinds.filter(({ type }) => !had.has(type)).map(option(''));
  const again = kinds.filter(({ type }) => had.has(type)).map(option('One more: '));
  return [...own, ...others, ...again];
}

function withGauge(job: Job, boreId: string, surveyId: string, chosen: string): Job {
  if (!chosen.startsWith('new:')) return setPlanGauge(job, boreId, surveyId, chosen);
  const type = chosen.slice('new:'.length) as GaugeType;
  const added = addGauge(job, type, freeName(job, type));
  return setPlanGauge(added, boreId, surveyId, added.gauges.at(-1)!.id);
}

/** Two gauges of one kind are told apart by number until they are given names. */
function freeName(job: Job, type: GaugeType): string {
  const usual = gaugeKind(type).name;
  const taken = new Set(job.gauges.map(({ name }) => name));
  let name = usual;
  for (let number = 2; taken.has(name); number++) name = `${usual} ${number}`;
  return name;
}

const ORDERS = [
  { value: 'round', text: 'round each depth' },
  { value: 'down', text: 'down each clock position' },
] as const;

function unitOptions(units: Units): { value: Unit; text: string }[] {
  const inch = { value: 'in', text: 'inches' } as const;
  const mm = { value: 'mm', text: 'millimetres' } as const;
  const thou = { value: 'thou', text: 'thou over or under the new size' } as const;
  return units === 'in' ? [inch, thou, mm] : [mm, inch, thou];
}

/** How the keys behave: what a typed number means, and where Enter goes. */
export function TypedHow({ units }: { readonly units: Units }) {
  const order = useSession((session) => session.order);
  const unit = useSession((session) => session.unit) ?? units;
  const keypad = useSession((session) => keypadWanted(session.keypad));
  const look = useSession((session) => session.look);
  return (
    <p className="facts typed-how">
      Typed in{' '}
      <Choice
        label="Readings are typed in"
        value={unit}
        options={unitOptions(units)}
        onChoose={(chosen) => look({ unit: chosen === units ? null : chosen })}
      />
      ; Enter goes{' '}
      <Choice
        label="Enter goes"
        value={order}
        options={ORDERS}
        onChoose={(chosen) => look({ order: chosen })}
      />
      <button
        type="button"
        className="link-button"
        aria-pressed={keypad}
        onClick={() => look({ keypad: !keypad })}
      >
        {keypad ? 'use the device’s own keys' : 'use large keys'}
      </button>
    </p>
  );
}
