/** The stage's own name, and how it is taken out of the job. */
import { removeSurvey, renameSurvey } from '../../job/edits.ts';
import type { Bench } from '../../store/bench.ts';
import { say } from '../../store/page.ts';
import { useSession } from '../../store/session.ts';
import { useJob } from '../../store/useJob.ts';
import { Field } from '../parts/Field.tsx';

export function StageLine({ bench: { bore, survey } }: { readonly bench: Bench }) {
  const edit = useJob((state) => state.edit);
  const undo = useJob((state) => state.undo);
  const look = useSession((session) => session.look);
  const at = bore.surveys.indexOf(survey);
  const remove = () => {
    edit((job) => removeSurvey(job, bore.id, survey.id));
    look({ survey: Math.max(0, at - 1), draft: null });
    say({
      tone: 'said',
      text: `“${survey.name}” is out of the job, with its readings.`,
      actions: [
        {
          label: 'put it back',
          act: () => {
            say(null);
            undo();
            look({ survey: at });
          },
        },
      ],
    });
  };
  return (
    <p className="facts">
      This stage is called{' '}
      <Field
        label="Name of this stage"
        kind="words"
        value={survey.name}
        onEnter={(name) => edit((job) => renameSurvey(job, bore.id, survey.id, name))}
      />
      {bore.surveys.length > 1 && (
        <>
          {'; '}
          <button type="button" className="link-button" onClick={remove}>
            take it out of the job
          </button>
        </>
      )}
      .
    </p>
  );
}
