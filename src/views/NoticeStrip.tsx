/** One message at the top of the notebook, and what can be done about it. */
import { useEffect, useRef } from 'react';
import { usePage } from '../store/page.ts';
import { useEvaluation } from '../store/useEvaluation.ts';
import { useKept } from '../store/useKept.ts';
import { Icon } from './parts/Icon.tsx';

export function NoticeStrip() {
  const notice = usePage((page) => page.notice);
  const change = usePage((page) => page.change);
  const refused = useKept((kept) => kept.refused);
  const failed = useEvaluation((state) => state.failed);
  const strip = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (notice !== null) strip.current?.scrollIntoView({ block: 'nearest', behavior: 'instant' });
  }, [notice]);
  return (
    <div className="notices" aria-live="polite" ref={strip}>
      {refused !== null && (
        <p className="notice" data-tone="fault">
          {refused}
        </p>
      )}
      {failed !== null && (
        <p className="notice" data-tone="fault">
          {failed}
        </p>
      )}
      {notice !== null && (
        <div className="notice" data-tone={notice.tone}>
          <p>{notice.text}</p>
          {notice.more !== undefined && (
            <ul>
              {notice.more.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
          <div className="notice-actions">
            {notice.actions?.map(({ label, act }) => (
              <button key={label} type="button" className="plain-button" onClick={act}>
                {label}
              </button>
            ))}
          </div>
          <button
            type="button"
            className="notice-close"
            aria-label="Put this message away"
            onClick={() => change({ notice: null })}
          >
            <Icon name="close" />
          </button>
        </div>
      )}
    </div>
  );
}
