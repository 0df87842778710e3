/** The bore's few sizes as one sentence, each edited where it stands. */
import { defaultPressFit } from '../../job/defaults.ts';
import { addBushing, type Dimension, setBushingOutside, setDimension } from '../../job/edits.ts';
import { boreFacts } from '../../job/facts.ts';
import type { Feature, Job, Typed } from '../../job/schema.ts';
import { formatAcross, lengthMm } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { Figure } from '../parts/Figure.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Words } from '../parts/Words.tsx';
import { outsideThatCounts } from './BushingPlaces.tsx';

export interface FactsProps {
  readonly job: Job;
  readonly bore: Feature;
}

/** How a dimension of the bore is edited. */
function useSize({ job, bore }: FactsProps) {
  const edit = useJob((state) => state.edit);
  return (dimension: Dimension) => ({
    units: job.units,
    onEnter: (typed: Typed | undefined) =>
      edit((now) => setDimension(now, bore.id, dimension, typed)),
  });
}

/** What the target follows from. */
export function Facts({ job, bore }: FactsProps) {
  const edit = useJob((state) => state.edit);
  const size = useSize({ job, bore });
  const { pressFit } = bore.wanted;
  return (
    <p className="facts">
      A bore <LengthField label="Length of the bore" typed={bore.length} {...size('length')} /> long
      for a bushing of{' '}
      <LengthField
        label="Outside diameter of the bushing, across"
        typed={bore.bushings[0]?.outside[0]}
        units={job.units}
        onEnter={(typed) => edit((now) => withBushing(now, bore, typed))}
      />{' '}
      <Words text={`across${outsideThatCounts({ job, bore })}; press fit`} />{' '}
      <LengthField
        label="Press fit, across"
        typed={pressFit}
        usual={defaultPressFit(job.units)}
        {...size('pressFit')}
      />
      {pressFit === undefined ? ' (usual)' : ''}
      <TargetSaid id={bore.id} />
    </p>
  );
}

/** Sizes that the map does not wait for. */
export function MoreFacts({ job, bore }: FactsProps) {
  const size = useSize({ job, bore });
  const outside = bore.bushings[0]?.outside[0];
  return (
    <p className="facts">
      New, it measured{' '}
      <LengthField
        label="New size of the bore, across"
        typed={bore.nominal}
        usual={outside}
        {...size('nominal')}
      />{' '}
      <Words
        text={`across${bore.nominal === undefined && outside !== undefined ? ' (as the bushing)' : ''}; the boss is`}
      />{' '}
      <LengthField
        label="Outside of the boss, across"
        typed={bore.boss?.outside}
        placeholder="not given"
        {...size('bossOutside')}
      />{' '}
      across outside.
    </p>
  );
}

/** What the sizes come to; a target that was set by hand is said as such, and follows the hand that drags it. */
function TargetSaid({ id }: { readonly id: string }) {
  const job = useJob((state) => state.job);
  const bore = job?.features.find((feature) => feature.id === id);
  if (job === null || bore === undefined) return null;
  const facts = boreFacts(job, bore);
  const byHand = lengthMm(bore.decisions.target);
  if (byHand > 0) {
    return (
      <>
        <Words text=". The target is set by hand: " />
        <b>
          <Figure text={formatAcross(byHand, job.units)} />
        </b>
        .
      </>
    );
  }
  const target = facts.bushingOutside.mm - facts.pressFit.mm;
  if (!(target > 0))
    return <Words text=". Give the bushing’s outside diameter, and the target follows." />;
  return (
    <>
      <Words text=", so the target is " />
      <b>
        <Figure text={formatAcross(target, job.units)} />
      </b>
      .
    </>
  );
}

function withBushing(job: Job, bore: Feature, typed: Typed | undefined): Job {
  const [first] = bore.bushings;
  if (first !== undefined) return setBushingOutside(job, bore.id, first.id, 0, typed);
  const added = addBushing(job, bore.id);
  if (!added.ok) return job;
  const fresh = added.job.features.find(({ id }) => id === bore.id)?.bushings.at(-1);
  return fresh === undefined ? job : setBushingOutside(added.job, bore.id, fresh.id, 0, typed);
}
