/** One part of the fit, folded: its answer in one line, the rest behind it. */
import { type ReactNode, useState } from 'react';
import type { PartLine } from '../../figures/fitLines.ts';
import { useSession } from '../../store/session.ts';
import { setFold } from './goTo.ts';
import { usePrinting } from './usePrinting.ts';
import './fitFold.css';

interface Props {
  readonly id: string;
  /** Of its head: 3 under the section, 4 under a bushing. */
  readonly level: 3 | 4;
  readonly title: string;
  readonly line: PartLine;
  readonly children: ReactNode;
}

/** What is folded away stays in the page, so that a search in it finds it. */
export function FitFold({ id, level, title, line: { says, calls }, children }: Props) {
  // As it was when it first showed: a part whose warning is mended does not shut under the hand that mends it.
  const [first] = useState(calls);
  const open = useSession((session) => session.folds[id] ?? first);
  const printing = usePrinting();
  const Head = level === 3 ? 'h3' : 'h4';
  return (
    <details
      id={id}
      className="fit-fold"
      data-calls={calls}
      open={open || printing}
      onToggle={({ currentTarget, target }) => {
        // A fold within this one tells of itself.
        if (target !== currentTarget) return;
        if (currentTarget.open !== (open || printing)) setFold(id, currentTarget.open);
      }}
    >
      <summary>
        <Head>{title}</Head>
        {calls && (
          <span className="fit-calls" role="img" aria-label="look here">
            !
          </span>
        )}
        <span className="fit-line">{says}</span>
      </summary>
      <div className="fit-fold-in">{children}</div>
    </details>
  );
}
