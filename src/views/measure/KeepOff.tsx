/** Places that are neither read nor ground: a grease hole, a chamfer, a groove. One sentence each. */
import { addKeepout, removeKeepout, setKeepout } from '../../job/edits.ts';
import type { Feature, Job, Keepout } from '../../job/schema.ts';
import type { Bench } from '../../store/bench.ts';
import { tellTakenOut } from '../../store/takeOut.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';

const KINDS = [
  { value: 'grease-hole', text: 'grease hole' },
  { value: 'chamfer', text: 'chamfer' },
  { value: 'groove', text: 'groove' },
  { value: 'other', text: 'place' },
] as const;
/** A pin has more to be guarded against weld. */
const OF_PIN = [
  ...KINDS,
  { value: 'thread', text: 'thread' },
  { value: 'face', text: 'face' },
] as const;
const kindsOf = ({ kind }: Feature) => (kind === 'pin' ? OF_PIN : KINDS);
const FACES = [
  { value: 'A', text: 'face A' },
  { value: 'B', text: 'face B, clock mirrored' },
] as const;

export function KeepOff({ bench: { job, bore } }: { readonly bench: Bench }) {
  const edit = useJob((state) => state.edit);
  return (
    <>
      {bore.keepouts.map((keepout) => (
        <Place key={keepout.id} job={job} bore={bore} keepout={keepout} />
      ))}
      <p className="facts">
        {bore.keepouts.length === 0 ? 'A hole, chamfer or groove to keep off? ' : 'Another? '}
        {kindsOf(bore).map(({ value, text }) => (
          <button
            key={value}
            type="button"
            className="link-button"
            onClick={() => edit((now) => addKeepout(now, bore.id, fresh(value, now)))}
          >
            add a {text}
          </button>
        ))}
      </p>
    </>
  );
}

/** At the mouth and not placed yet: until its far end is typed it keeps nothing off. */
function fresh(kind: Keepout['kind'], job: Job): Omit<Keepout, 'id'> {
  const at = (text: string) => ({ text, unit: job.units });
  return { kind, face: 'A', from: at(kind === 'chamfer' ? '0' : ''), to: at('') };
}

interface PlaceProps {
  readonly job: Job;
  readonly bore: Feature;
  readonly keepout: Keepout;
}

function Place({ job, bore, keepout }: PlaceProps) {
  const edit = useJob((state) => state.edit);
  const change = (part: Parameters<typeof setKeepout>[3]) =>
    edit((now) => setKeepout(now, bore.id, keepout.id, part));
  const depth = (end: 'from' | 'to') => ({
    typed: keepout[end].text.trim() === '' ? undefined : keepout[end],
    units: job.units,
    onEnter: (typed: Keepout['from'] | undefined) =>
      change({ [end]: typed ?? { text: '', unit: job.units } }),
  });
  return (
    <p className="facts">
      Keep off the{' '}
      <Choice
        label="Kind of place to keep off"
        value={keepout.kind}
        options={OF_PIN}
        onChoose={(kind) => change({ kind })}
      />{' '}
      {keepout.name !== undefined && `(${keepout.name}) `}
      from <LengthField label="Begins at this depth" {...depth('from')} /> to{' '}
      <LengthField label="Ends at this depth" {...depth('to')} /> deep from{' '}
      <Choice
        label="Face that its depths and clock are taken from"
        value={keepout.face}
        options={FACES}
        onChoose={(face) => change({ face })}
      />
      <Around job={job} keepout={keepout} onChange={change} />;{' '}
      <TakeOut bore={bore} keepout={keepout} />.
    </p>
  );
}

interface AroundProps {
  readonly job: Job;
  readonly keepout: Keepout;
  onChange(part: Parameters<typeof setKeepout>[3]): void;
}

/** All round until a clock position is typed; then how wide it is as well. */
function Around({ job, keepout, onChange }: AroundProps) {
  return (
    <>
      , at{' '}
      <Field
        label="Clock position of its middle"
        value={keepout.clock ?? ''}
        placeholder="all round"
        onEnter={(clock) => onChange({ clock })}
      />
      {keepout.clock !== undefined && (
        <>
          {' '}
          o’clock,{' '}
          <LengthField
            label="Width round the bore"
            typed={keepout.width}
            placeholder="not given"
            units={job.units}
            onEnter={(width) => onChange({ width })}
          />{' '}
          wide round the bore
        </>
      )}
    </>
  );
}

function TakeOut({ bore, keepout }: Omit<PlaceProps, 'job'>) {
  const edit = useJob((state) => state.edit);
  const kind = OF_PIN.find(({ value }) => value === keepout.kind)?.text ?? 'place';
  const remove = () => {
    edit((now) => removeKeepout(now, bore.id, keepout.id));
    tellTakenOut(`The ${kind} is no longer kept off.`);
  };
  return (
    <button
      type="button"
      className="link-button"
      aria-label={`take it out: ${kind}`}
      onClick={remove}
    >
      take it out
    </button>
  );
}
