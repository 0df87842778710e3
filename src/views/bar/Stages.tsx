/** The stages of the job in a row, in the order that they were measured; one beside another, and the next one. */
import { useEffect, useRef } from 'react';
import { addSurvey } from '../../job/edits.ts';
import { isOfBushing } from '../../job/measuredAt.ts';
import { surveyName } from '../../job/plan.ts';
import type { Stage } from '../../job/schema.ts';
import type { Bench } from '../../store/bench.ts';
import { compareWith, leaveCompare, showStage } from '../../store/compare.ts';
import { useSession } from '../../store/session.ts';
import { useJob } from '../../store/useJob.ts';
import { Disclosure } from '../parts/Disclosure.tsx';
import { Icon } from '../parts/Icon.tsx';

const NEXT: readonly Stage[] = ['after-squeezing', 'pass', 'after-build-up', 'fitted'];

export function Stages({ bench }: { readonly bench: Bench }) {
  const { bore, survey } = bench;
  const ghost = useSession((session) => session.ghost);
  const row = useRef<HTMLOListElement>(null);
  // Of more stages than there is room for, the one on the bench is in sight.
  useEffect(() => {
    const list = row.current;
    const chip = list?.querySelector<HTMLElement>(`[data-stage="${survey.id}"]`);
    if (!list || !chip) return;
    const [from, to] = [chip.offsetLeft - EDGE, chip.offsetLeft + chip.offsetWidth + EDGE];
    if (from < list.scrollLeft) list.scrollTo({ left: from });
    else if (to > list.scrollLeft + list.clientWidth)
      list.scrollTo({ left: to - list.clientWidth });
  }, [survey.id]);
  return (
    <nav className="stages" aria-label="Stages of the job">
      <ol ref={row}>
        {bore.surveys.map(({ id, name }, index) => (
          <li key={id}>
            <button
              type="button"
              className="chip"
              data-stage={id}
              data-ghost={index === ghost && id !== survey.id}
              aria-current={id === survey.id ? 'step' : undefined}
              onClick={() => showStage(index)}
            >
              {name}
            </button>
          </li>
        ))}
      </ol>
      {bore.surveys.length > 1 && bore.kind !== 'pin' && bore.kind !== 'bushing-outside' && (
        <div className="stage-compare">
          <Disclosure
            label="Compare with another stage"
            buttonClass="chip chip-add"
            button={<Icon name="compare" />}
          >
            {(close) => <Others bench={bench} close={close} />}
          </Disclosure>
        </div>
      )}
      <Disclosure label="Add a stage" buttonClass="chip chip-add" button={<Icon name="plus" />}>
        {(close) => <NextStages bench={bench} close={close} />}
      </Disclosure>
    </nav>
  );
}

/** Room that is kept beside the stage that was scrolled to, px. */
const EDGE = 24;

/** The stages that the one on the bench can be compared with. */
function Others({ bench: { bore, survey }, close }: NextStagesProps) {
  const ghost = useSession((session) => session.ghost);
  return (
    <div className="menu">
      <h2>Compare {survey.name} with</h2>
      {bore.surveys.map(
        ({ id, name }, index) =>
          id !== survey.id && (
            <button
              key={id}
              type="button"
              aria-current={ghost === index ? 'true' : undefined}
              onClick={() => {
                compareWith(index);
                close();
              }}
            >
              {name}
            </button>
          ),
      )}
      {ghost !== null && (
        <button
          type="button"
          onClick={() => {
            leaveCompare();
            close();
          }}
        >
          back to {survey.name} alone
        </button>
      )}
    </div>
  );
}

interface NextStagesProps {
  readonly bench: Bench;
  close(): void;
}

function NextStages({ bench: { bore }, close }: NextStagesProps) {
  const look = useSession((session) => session.look);
  const edit = useJob((state) => state.edit);
  return (
    <div className="menu">
      <h2>Measured again</h2>
      {NEXT.map((stage) => (
        <button
          key={stage}
          type="button"
          onClick={() => {
            edit((job) => addSurvey(job, bore.id, stage));
            look({
              survey: bore.surveys.length,
              cell: { row: 0, column: 0 },
              draft: null,
            });
            close();
          }}
        >
          {surveyName(stage, bore.surveys)}
          {isOfBushing(bore, { stage }) && ': the bushing’s own bore'}
        </button>
      ))}
    </div>
  );
}
