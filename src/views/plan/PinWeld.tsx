/** Welding a pin up: what it is welded with, the questions on heat, and the steps behind them. */
import type { PinPlan } from '../../evaluate/pinTypes.ts';
import { pinSteps, skinCaution, TURNING_CAUTIONS } from '../../figures/pinWork.ts';
import { addWeldedSurvey } from '../../job/edits.ts';
import { HEAT_RULES, heatCautions, hotWork } from '../../job/safety.ts';
import { useSession } from '../../store/session.ts';
import { useJob } from '../../store/useJob.ts';
import { SafetyQuestions } from './SafetyQuestions.tsx';
import { Said } from './Said.tsx';
import { WeldGiven } from './WeldGiven.tsx';
import type { Worked } from './worked.ts';

interface Props {
  readonly bench: Worked;
  readonly plan: PinPlan;
}

export function PinWeld({ bench, plan }: Props) {
  const { job } = bench;
  const work = hotWork(job.safety);
  const caution = skinCaution(plan);
  return (
    <>
      <h3>Welding it up</h3>
      <WeldGiven
        bench={bench}
        wholly={plan.stage === 'worn' ? 'over all that runs' : null}
        above="for turning"
      />
      {caution !== null && <p className="stop">{caution}</p>}
      <SafetyQuestions safety={job.safety} work={work} />
      {work.open && (
        <>
          {work.signOff !== null && <p>Signed for by {work.signOff}.</p>}
          <Said lines={pinSteps(plan)} steps />
          <ul className="cautions">
            {[...heatCautions(job.safety, 'pin'), ...TURNING_CAUTIONS].map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <p className="soft">{HEAT_RULES}</p>
          <Measure bench={bench} />
        </>
      )}
    </>
  );
}

function Measure({ bench: { bore } }: { readonly bench: Worked }) {
  const edit = useJob((state) => state.edit);
  const look = useSession((session) => session.look);
  return (
    <button
      type="button"
      className="plain-button"
      onClick={() => {
        edit((now) => addWeldedSurvey(now, bore.id));
        look({ survey: bore.surveys.length, cell: { row: 0, column: 0 }, section: 'measure' });
        document.getElementById('measure')?.scrollIntoView();
      }}
    >
      It is cold: measure it welded up
    </button>
  );
}
