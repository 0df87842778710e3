/** The few sizes of a pin or an old bushing as one sentence, and how it is taken out of the job. */
import { type Dimension, removeFeature, renameFeature, setDimension } from '../../job/edits.ts';
import type { Feature, Job, Typed } from '../../job/schema.ts';
import { attempt } from '../../store/attempt.ts';
import { say } from '../../store/page.ts';
import { useSession } from '../../store/session.ts';
import { tellTakenOut } from '../../store/takeOut.ts';
import { useJob } from '../../store/useJob.ts';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';

export interface PartFactsProps {
  readonly job: Job;
  readonly part: Feature;
}

const WHAT: Readonly<Record<Feature['kind'], string>> = {
  bore: 'bore',
  pin: 'pin',
  'bushing-inside': 'bushing, measured inside',
  'bushing-outside': 'bushing, measured outside',
};

export function PartFacts({ job, part }: PartFactsProps) {
  const edit = useJob((state) => state.edit);
  const size = (dimension: Dimension) => ({
    units: job.units,
    onEnter: (typed: Typed | undefined) =>
      edit((now) => setDimension(now, part.id, dimension, typed)),
  });
  const outside = part.kind === 'pin' || part.kind === 'bushing-outside';
  return (
    <p className="facts">
      <Field
        label="Name of this part"
        kind="words"
        value={part.name}
        onEnter={(name) => edit((now) => renameFeature(now, part.id, name))}
      />
      , a {WHAT[part.kind]}: new it was{' '}
      <LengthField
        label="New size, across"
        typed={part.nominal}
        placeholder="not given"
        {...size('nominal')}
      />{' '}
      across, and it is{' '}
      <LengthField
        label="Length of the part"
        typed={part.length}
        placeholder="not given"
        {...size('length')}
      />{' '}
      long.
      {outside &&
        part.nominal === undefined &&
        ' Without a new size its own largest counts as new.'}{' '}
      <span className="soft">
        Depths count from the end at face A, and the clock is the bore’s, by the witness marks.
      </span>{' '}
      <TakeOut part={part} />
    </p>
  );
}

function TakeOut({ part }: Pick<PartFactsProps, 'part'>) {
  const look = useSession((session) => session.look);
  const remove = () => {
    const why = attempt((job) => removeFeature(job, part.id));
    if (why !== null) {
      say({ tone: 'fault', text: why });
      return;
    }
    look({ bore: 0, survey: 0, draft: null });
    tellTakenOut(`“${part.name}” is out of the job, with its readings.`);
  };
  return (
    <button type="button" className="link-button" onClick={remove}>
      take it out of the job
    </button>
  );
}
