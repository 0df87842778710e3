/** Giving the next pass to the bench: it is kept as it stands, and the readings after it are held against that. */
import { useRef } from 'react';
import type { Passes } from '../../evaluate/passes.ts';
import { issuedOf, issuedWords } from '../../figures/issued.ts';
import { issuePass } from '../../job/edits.ts';
import { jobStore } from '../../store/job.ts';
import { usePasses } from '../../store/passes.ts';
import { useJob } from '../../store/useJob.ts';
import { Words } from '../parts/Words.tsx';
import { today } from '../today.ts';
import type { Worked } from './worked.ts';

interface Props {
  readonly bench: Worked;
  readonly passes: Passes;
}

export function PassGiven({ bench, passes }: Props) {
  const { issued } = passes;
  const block = useRef<HTMLElement>(null);
  // While the plan is worked out anew, the pass that stands here is not the one that would be kept.
  const now = useJob((state) => state.job);
  const standing = usePasses(({ of }) => of?.job === now);
  return (
    <section className="pass-given" aria-label="This pass on the bench" ref={block} tabIndex={-1}>
      <div role="status">
        {issuedWords(passes).map((text) => (
          <p key={text}>
            <Words text={text} />
          </p>
        ))}
      </div>
      {issued?.same === false && (
        <ul className="cautions">
          {issued.words.map((text) => (
            <li key={text}>
              <Words text={text} />
            </li>
          ))}
        </ul>
      )}
      {issued?.same !== true && (
        <>
          <button
            type="button"
            className="plain-button"
            aria-disabled={!standing}
            onClick={() => {
              if (!standing) return;
              // The button goes; who works by keys stays at what is said instead.
              block.current?.focus();
              give(bench, passes);
            }}
          >
            {issued === null ? 'Give this pass to the bench' : 'Give this pass instead'}
          </button>
          <p className="soft">
            Keeps it as it stands, whatever is changed in the plan meanwhile: the next readings are
            held against what was really asked. Undo takes it back.
          </p>
        </>
      )}
    </section>
  );
}

function give({ job, bore, survey, boreSeen, surveySeen }: Worked, { plan, done }: Passes): void {
  const { surface, target } = surveySeen;
  const [pass] = plan.passes;
  if (surface === null || target === null || pass === undefined) return;
  const issued = issuedOf({
    pass,
    tool: plan.tool,
    number: done + 1,
    survey,
    surface,
    target,
    length: boreSeen.facts.length.mm,
    units: job.units,
    when: today(),
  });
  jobStore.getState().edit((now) => issuePass(now, bore.id, issued));
}
