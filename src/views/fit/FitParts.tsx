/** The parts of the fit, bushing by bushing. */
import { PART_TITLES } from '../../figures/fitAnswers.ts';
import { NO_WALL } from '../../figures/fitWords.ts';
import { setFit } from '../../job/edits.ts';
import { isOfBushing } from '../../job/measuredAt.ts';
import { useAskFit, useFitOf } from '../../store/useFitOf.ts';
import { useJob } from '../../store/useJob.ts';
import type { Worked } from '../plan/worked.ts';
import './fitLine.css';
import { OneBushing } from './OneBushing.tsx';
import { RunningPart } from './RunningPart.tsx';
import { WholeParts } from './WholeParts.tsx';

export default function FitParts({ bench }: { readonly bench: Worked }) {
  const { job, bore, survey } = bench;
  useAskFit(job, bore.id, survey.id);
  const found = useFitOf({ job: job.id, bore: bore.id, survey: survey.id });
  return (
    <>
      {(found?.alone.length ?? 0) === 0 && <WallChoice bench={bench} />}
      {found === null ? (
        <p className="soft">Working it out…</p>
      ) : (
        <>
          {found.alone.map((one) => (
            <section key={one.id}>
              <h3>{one.name}</h3>
              <p>{NO_WALL}</p>
              <h4>{PART_TITLES.running}</h4>
              <RunningPart bench={bench} one={one} />
            </section>
          ))}
          {found.bushings.map((one) => (
            <OneBushing key={`${survey.id} ${one.seated.id}`} {...{ bench, found, one }} />
          ))}
          <WholeParts key={survey.id} bench={bench} found={found} />
        </>
      )}
    </>
  );
}

/** Which wall is judged: as it will be, or as it is. */
function WallChoice({ bench: { bore, survey } }: { readonly bench: Worked }) {
  const edit = useJob((state) => state.edit);
  const wall = bore.decisions.fit?.wall ?? 'planned';
  const choose = (one: 'planned' | 'measured') =>
    edit((now) => setFit(now, bore.id, 'wall', one === 'planned' ? undefined : one));
  return (
    <fieldset className="answers">
      <legend>The bore that the bushing goes into</legend>
      <label>
        <input
          type="radio"
          name="fit-wall"
          checked={wall === 'planned'}
          onChange={() => choose('planned')}
        />
        as the plan is to leave it
      </label>
      <label>
        <input
          type="radio"
          name="fit-wall"
          checked={wall === 'measured'}
          onChange={() => choose('measured')}
        />
        {isOfBushing(bore, survey) ? 'as it was measured before' : 'as it is measured here'}
      </label>
    </fieldset>
  );
}
