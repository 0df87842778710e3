/** How the repairer means to mend it; what needs heat shows its first step only once the questions are answered. */
import { lazy, Suspense } from 'react';
import { addSurvey } from '../../job/edits.ts';
import { HEAT_RULES, heatCautions, hotWork } from '../../job/safety.ts';
import type { Decisions } from '../../job/schema.ts';
import { useSession } from '../../store/session.ts';
import { useJob } from '../../store/useJob.ts';
import { takeWay } from '../../store/ways.ts';
import { Choice } from '../parts/Choice.tsx';
import { SafetyQuestions } from './SafetyQuestions.tsx';
import type { Worked } from './worked.ts';

const Ways = lazy(() => import('./Ways.tsx'));

type Way = NonNullable<Decisions['way']>;

const WAYS: readonly { value: Way; text: string; hot?: true }[] = [
  { value: 'undecided', text: 'not decided' },
  { value: 'grind', text: 'grind the high spots only' },
  { value: 'squeeze', text: 'squeeze it with heat, then grind', hot: true },
  { value: 'shim', text: 'grind it round, then shim it' },
  { value: 'oversize', text: 'fit a larger bushing' },
  { value: 'sleeve', text: 'bore it out and sleeve it' },
  { value: 'weld', text: 'weld it up, then grind', hot: true },
  { value: 'leave', text: 'leave it as it is' },
];

export function WayChoice({ bench }: { readonly bench: Worked }) {
  const { job, bore } = bench;
  const way = WAYS.find(({ value }) => value === bore.decisions.way) ?? WAYS[0]!;
  const work = hotWork(job.safety);
  return (
    <>
      <h3>Way of mending</h3>
      <p className="facts">
        You mean to{' '}
        <Choice
          label="Way of mending"
          value={way.value}
          options={WAYS}
          onChoose={(chosen) => takeWay(bench, chosen)}
        />
        .
      </p>
      <Suspense fallback={<div style={{ minHeight: '30rem' }} />}>
        <Ways bench={bench} />
      </Suspense>
      {way.hot === true && (
        <>
          <SafetyQuestions safety={job.safety} work={work} />
          {work.open && <HotSteps bench={bench} way={way.value} />}
        </>
      )}
    </>
  );
}

interface HotStepsProps {
  readonly bench: Worked;
  readonly way: Way;
}

function HotSteps({ bench: { job, bore }, way }: HotStepsProps) {
  const edit = useJob((state) => state.edit);
  const look = useSession((session) => session.look);
  const stage = way === 'squeeze' ? 'after-squeezing' : 'after-build-up';
  const { signOff } = hotWork(job.safety);
  return (
    <div className="hot-steps">
      {signOff !== null && <p>Signed for by {signOff}.</p>}
      <p>
        {way === 'squeeze'
          ? 'Judge the squeeze by the largest place, not by the mean: it should end a little under the target, for grinding back. No squeeze closes a bore evenly.'
          : 'The bore closes and goes oval as the weld cools: nothing about its shape can be assumed afterwards.'}{' '}
        When it is cold, measure every place again as a stage of its own; the map of what to grind
        then comes from those readings.
      </p>
      <ul className="cautions">
        {heatCautions(job.safety).map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p className="soft">{HEAT_RULES}</p>
      <button
        type="button"
        className="plain-button"
        onClick={() => {
          edit((now) => addSurvey(now, bore.id, stage));
          look({ survey: bore.surveys.length, cell: { row: 0, column: 0 }, section: 'measure' });
          document.getElementById('measure')?.scrollIntoView();
        }}
      >
        {way === 'squeeze'
          ? 'It is cold: measure after squeezing'
          : 'It is cold: measure after build-up'}
      </button>
    </div>
  );
}
