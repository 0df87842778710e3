/** With what and from which face the readings are taken: a sentence with choices in it. */
import { addGauge, setPlanFace, setPlanGauge } from '../../job/edits.ts';
import { type GaugeKind, gaugeKind, gaugeKindsFor, kindOfGauge } from '../../job/gauges.ts';
import type { Feature, GaugeType, Job, Survey } from '../../job/schema.ts';
import { gaugeOf } from '../../job/sizes.ts';
import type { Bench } from '../../store/bench.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Repeats } from './GaugeFigures.tsx';

export function MeasuredWith({ bench }: { readonly bench: Bench }) {
  const { job, bore, survey } = bench;
  const edit = useJob((state) => state.edit);
  const gauge = gaugeOf(job.gauges, survey.plan.gauge);
  return (
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
