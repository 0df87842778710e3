/** The stage's own name, and how it is taken out of the job. */
import { removeSurvey, renameSurvey } from '../../job/edits.ts';
import type { Bench } from '../../store/bench.ts';
import { useSession } from '../../store/session.ts';
import { tellTakenOut } from '../../store/takeOut.ts';
import { useJob } from '../../store/useJob.ts';
import { Field } from '../parts/Field.tsx';

export function StageLine({ bench: { bore, survey } }: { readonly bench: Bench }) {
  const edit = useJob((state) => state.edit);
  const look = useSession((session) => session.look);
  const at = bore.surveys.indexOf(survey);
  const remove = () => {
    edit((job) => removeSurvey(job, bore.id, survey.id));
    look({ survey: Math.max(0, at - 1), draft: null });
    tellTakenOut(`“${survey.name}” is out of the job, with its readings.`, () =>
      look({ survey: at }),
    );
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
