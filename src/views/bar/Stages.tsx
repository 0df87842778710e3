/** The stages of the job in a row, in the order that they were measured; and the next one. */
import { addSurvey } from '../../job/edits.ts';
import { surveyName } from '../../job/plan.ts';
import type { Stage } from '../../job/schema.ts';
import type { Bench } from '../../store/bench.ts';
import { useSession } from '../../store/session.ts';
import { useJob } from '../../store/useJob.ts';
import { Disclosure } from '../parts/Disclosure.tsx';
import { Icon } from '../parts/Icon.tsx';

const NEXT: readonly Stage[] = ['after-squeezing', 'pass', 'after-build-up', 'fitted'];

export function Stages({ bench }: { readonly bench: Bench }) {
  const { bore, survey } = bench;
  const look = useSession((session) => session.look);
  return (
    <nav className="stages" aria-label="Stages of the job">
      <ol>
        {bore.surveys.map(({ id, name }, index) => (
          <li key={id}>
            <button
              type="button"
              className="chip"
              aria-current={id === survey.id ? 'step' : undefined}
              onClick={() => look({ survey: index, draft: null })}
            >
              {name}
            </button>
          </li>
        ))}
        <li>
          <Disclosure label="Add a stage" buttonClass="chip chip-add" button={<Icon name="plus" />}>
            {(close) => <NextStages bench={bench} close={close} />}
          </Disclosure>
        </li>
      </ol>
    </nav>
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
        </button>
      ))}
    </div>
  );
}
