/** What must be known before any flame or weld, asked in place; "don't know" stops, and says whom to ask. */
import { setSafety } from '../../job/edits.ts';
import { type HotWork, SAFETY_QUESTIONS, type SafetyQuestion } from '../../job/safety.ts';
import type { Safety } from '../../job/schema.ts';
import { useJob } from '../../store/useJob.ts';
import { Field } from '../parts/Field.tsx';

export interface SafetyQuestionsProps {
  readonly safety: Safety;
  readonly work: HotWork;
}

export function SafetyQuestions({ safety, work }: SafetyQuestionsProps) {
  const left = work.asks.length;
  return (
    <div className="safety" data-open={work.open}>
      <p>
        <b>{work.open ? 'Before any heat: answered.' : 'Before any heat, answer these.'}</b>{' '}
        {left > 0 &&
          `${left === 1 ? 'One question is' : `${left} questions are`} open; no step is shown until all are answered.`}
      </p>
      {SAFETY_QUESTIONS.map((question) => (
        <OneQuestion key={question.question} question={question} safety={safety} work={work} />
      ))}
    </div>
  );
}

interface OneQuestionProps extends SafetyQuestionsProps {
  readonly question: SafetyQuestion;
}

function OneQuestion({
  question: { question, asks, because, answers },
  safety,
  work,
}: OneQuestionProps) {
  const edit = useJob((state) => state.edit);
  const stop = work.stops.find((one) => one.question === question);
  const answer = (value: string) =>
    edit((job) => setSafety(job, question, value as Safety[typeof question]));
  return (
    <fieldset data-stops={stop !== undefined}>
      <legend>{asks}</legend>
      <p className="soft">{because}</p>
      <div className="answers">
        {answers.map(({ value, says }) => (
          <label key={value}>
            <input
              type="radio"
              name={`safety-${question}`}
              checked={safety[question] === value}
              onChange={() => answer(value)}
            />
            <span>{says}</span>
          </label>
        ))}
      </div>
      {question === 'carriesPeople' && safety.carriesPeople === 'yes' && (
        <p>
          Signed for by{' '}
          <Field
            label="Who, qualified, signs for it"
            kind="words"
            value={safety.signedOffBy ?? ''}
            placeholder="name"
            onEnter={(name) => edit((job) => setSafety(job, 'signedOffBy', name))}
          />
        </p>
      )}
      {stop !== undefined && (
        <p className="stop" role="status">
          {stop.says} Ask {stop.whom}.
        </p>
      )}
    </fieldset>
  );
}
