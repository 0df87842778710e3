/** The newest reading in doubt, said on the keypad, which covers the list under the table. */
import type { Doubt } from '../../figures/checkWords.ts';
import type { Bench } from '../../store/bench.ts';
import { useJob } from '../../store/useJob.ts';
import { Words } from '../parts/Words.tsx';
import { answersTo } from './answers.ts';

export interface EchoDoubtProps {
  readonly bench: Bench;
  readonly doubt: Doubt;
}

export function EchoDoubt({ bench, doubt }: EchoDoubtProps) {
  const edit = useJob((state) => state.edit);
  const { use, leaveOut } = answersTo(doubt, bench);
  return (
    <div className="echo-doubt" role="status">
      <p>
        <b>Check</b> <Words text={doubt.place} />: {doubt.brief}
      </p>
      <p className="echo-answers">
        {use !== null && (
          <button type="button" className="plain-button" onClick={() => edit(use)}>
            use {doubt.suggested}
          </button>
        )}
        <button type="button" className="plain-button" onClick={() => edit(leaveOut)}>
          leave {doubt.rows.length === 1 ? 'it' : 'them'} out
        </button>
      </p>
    </div>
  );
}
