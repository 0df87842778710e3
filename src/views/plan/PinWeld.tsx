/** Welding a pin up: what it is welded with, the questions on heat, and the steps behind them. */
import type { PinPlan } from '../../evaluate/pinTypes.ts';
import { pinSteps, skinCaution, TURNING_CAUTIONS } from '../../figures/pinWork.ts';
import { addWeldedSurvey, setMending } from '../../job/edits.ts';
import { USUAL_OVERLAP } from '../../job/mendingFacts.ts';
import { HEAT_RULES, heatCautions, hotWork } from '../../job/safety.ts';
import { useSession } from '../../store/session.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { MendingLength, PlainNumber, WayLength } from './mendingFields.tsx';
import { SafetyQuestions } from './SafetyQuestions.tsx';
import { Said } from './Said.tsx';
import type { Worked } from './worked.ts';

const OVER = [
  { value: 'seat', text: 'over all that runs' },
  { value: 'low', text: 'where it is low only' },
] as const;

const ELECTRODES = [
  { value: '2.5', text: '2.5 mm (3/32 in)' },
  { value: '3.2', text: '3.2 mm (1/8 in)' },
  { value: '4.0', text: '4.0 mm (5/32 in)' },
] as const;

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
      <Given bench={bench} plan={plan} />
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

function Given({ bench, plan }: Props) {
  const edit = useJob((state) => state.edit);
  const { bore } = bench;
  const { weld = {} } = bore.decisions;
  const of = { bench, way: 'weld' } as const;
  return (
    <p className="facts">
      Weld{' '}
      {plan.stage === 'worn' ? (
        <Choice
          label="Where weld goes on"
          value={weld.over ?? 'seat'}
          options={OVER}
          onChoose={(over) => edit((now) => setMending(now, bore.id, 'weld', 'over', over))}
        />
      ) : (
        'where it is low only'
      )}
      ,{' '}
      <WayLength bench={bench} of="weldAllowance" label="Weld above the finished size, per side" />{' '}
      per side above the finished size for turning, with electrodes of{' '}
      <Choice
        label="Electrode"
        value={weld.electrode ?? '3.2'}
        options={ELECTRODES}
        onChoose={(one) => edit((now) => setMending(now, bore.id, 'weld', 'electrode', one))}
      />
      , beads <MendingLength {...of} of="beadHeight" usual="beadHeight" label="Height of a bead" />{' '}
      high and <MendingLength {...of} of="beadWidth" usual="beadWidth" label="Width of a bead" />{' '}
      wide that lap by{' '}
      <PlainNumber
        label="How much of a bead lies on the one before, per cent"
        text={weld.overlap}
        usual={String(USUAL_OVERLAP)}
        onEnter={(text) => edit((now) => setMending(now, bore.id, 'weld', 'overlap', text))}
      />{' '}
      %. Carbon equivalent of the steel{' '}
      <PlainNumber
        label="Carbon equivalent of the steel, per cent"
        text={weld.carbon}
        onEnter={(text) => edit((now) => setMending(now, bore.id, 'weld', 'carbon', text))}
      />{' '}
      %.
    </p>
  );
}
