/** Plain sentences that matter to the repairer, marked by what kind they are. */

import type { Remark } from '../../bore/types.ts';
import { Words } from './Words.tsx';

const MARKS: Readonly<Record<Remark['kind'], string>> = {
  missing: '?',
  assumed: '≈',
  warning: '!',
  finding: '·',
  fault: '!',
};

export interface RemarksProps {
  readonly head?: string;
  readonly remarks: readonly Remark[];
}

export function Remarks({ head, remarks }: RemarksProps) {
  if (remarks.length === 0) return null;
  return (
    <>
      {head !== undefined && <h3>{head}</h3>}
      <ul className="remarks">
        {remarks.map(({ kind, text }) => (
          <li key={text} data-kind={kind}>
            <span className="remark-mark" aria-hidden="true">
              {MARKS[kind]}
            </span>
            <span>
              <Words text={text} />
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
