/** The order of the work as a checklist to tick off, on the page and on paper. */
import type { Step } from '../../figures/orderStep.ts';
import type { Paper } from '../../figures/paper.ts';
import { PAPERS } from '../../figures/paper.ts';
import { setFit } from '../../job/edits.ts';
import { hotWork } from '../../job/safety.ts';
import { useJob } from '../../store/useJob.ts';
import { PrintOn } from '../parts/PrintOn.tsx';
import { Words } from '../parts/Words.tsx';
import { PageHead } from '../plan/PageHead.tsx';
import type { Worked } from '../plan/worked.ts';
import '../plan/passPage.css';

interface Props {
  readonly bench: Worked;
  readonly steps: readonly Step[];
}

export function OrderPart({ bench, steps }: Props) {
  const { job, bore } = bench;
  const edit = useJob((state) => state.edit);
  const done = bore.decisions.fit?.done ?? [];
  const tick = (key: string, on: boolean) =>
    edit((now) => {
      const kept = done.filter((one) => one !== key);
      const next = on ? [...kept, key] : kept;
      return setFit(now, bore.id, 'done', next.length === 0 ? undefined : next);
    });
  return (
    <>
      <ol className="order-steps">
        {steps.map(({ key, says, cautions }) => (
          <li key={key}>
            <label>
              <input
                type="checkbox"
                checked={done.includes(key)}
                onChange={(event) => tick(key, event.target.checked)}
              />
              <span>
                <Words text={says} />
                {cautions.map((caution) => (
                  <span key={caution} className="order-caution">
                    {caution}
                  </span>
                ))}
              </span>
            </label>
          </li>
        ))}
      </ol>
      <p className="soft">
        {hotWork(job.safety).open
          ? ''
          : 'Steps with heat wait until the questions about heat under Plan are answered. '}
        Local codes, the maker of the machine and licensed practice come first.
      </p>
      <p>
        Print the list{' '}
        <PrintOn units={job.units}>
          {(paper) => <OrderPage bench={bench} steps={steps} done={done} paper={paper} />}
        </PrintOn>
      </p>
    </>
  );
}

interface PageProps {
  readonly bench: Worked;
  readonly steps: readonly Step[];
  readonly done: readonly string[];
  readonly paper: Paper;
}

/** On paper a box stands before each step. */
function OrderPage({ bench, steps, done, paper }: PageProps) {
  const { width, height } = PAPERS[paper];
  return (
    <article
      className="pass-page flowing"
      style={{ width: `${width}mm`, minHeight: `${height - 1}mm` }}
    >
      <PageHead bench={bench} title="Order of the work" />
      <ul className="order-paper">
        {steps.map(({ key, says, cautions }) => (
          <li key={key}>
            <span>{done.includes(key) ? '☑' : '☐'}</span> {says}
            {cautions.map((caution) => (
              <b key={caution} className="order-caution">
                {caution}
              </b>
            ))}
          </li>
        ))}
      </ul>
      <p>Local codes, the maker of the machine and licensed practice come first.</p>
    </article>
  );
}
