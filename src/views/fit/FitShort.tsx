/** The fit of one bushing in short: each question answered, with a way to the part that tells it in full. */
import type { BushingFit } from '../../evaluate/fit.ts';
import { type BushingPartName, fitAnswers, PART_TITLES } from '../../figures/fitAnswers.ts';
import { fitWants, WANT_NAMES } from '../../figures/fitMissing.ts';
import type { Units } from '../../job/schema.ts';
import { Words } from '../parts/Words.tsx';
import { foldId, goToFold, goToWant } from './goTo.ts';

interface Props {
  readonly one: BushingFit;
  readonly bore: string;
  /** The first bushing of the same bore. */
  readonly first: string;
  readonly units: Units;
  /** Whether steps with heat may be told. */
  readonly open: boolean;
}

export function FitShort({ one, bore, first, units, open }: Props) {
  const { id } = one.seated;
  const wants = fitWants(one, open);
  return (
    <>
      <dl className="fit-short">
        {fitAnswers(one, units, open).map(({ asks, question, says, parts }) => (
          <div key={asks}>
            <dt>{question}</dt>
            <dd>
              <Words text={says} />{' '}
              {parts.map((part: BushingPartName) => (
                <button
                  key={part}
                  type="button"
                  className="link-button fit-jump"
                  onClick={() => goToFold(foldId(bore, id, part))}
                >
                  {PART_TITLES[part]}
                </button>
              ))}
            </dd>
          </div>
        ))}
      </dl>
      {wants.length > 0 && (
        <p className="fit-wants">
          Still wanted:
          {wants.map((want) => (
            <button
              key={want}
              type="button"
              className="link-button fit-jump"
              onClick={() => goToWant(want, bore, id, first)}
            >
              {WANT_NAMES[want]}
            </button>
          ))}
        </p>
      )}
    </>
  );
}
