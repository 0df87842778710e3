/** The jobs that this device keeps, to go back to; one taken off can be put back. */
import { useMemo } from 'react';
import { openKept } from '../../store/files.ts';
import type { KeptEntry } from '../../store/keep.ts';
import { keeper } from '../../store/kept.ts';
import { say } from '../../store/page.ts';
import { useJob } from '../../store/useJob.ts';
import { useKept } from '../../store/useKept.ts';
import { Icon } from '../parts/Icon.tsx';

export interface KeptJobsProps {
  close(): void;
}

const WHEN = { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' } as const;

export function KeptJobs({ close }: KeptJobsProps) {
  const when = useMemo(() => new Intl.DateTimeFormat(undefined, WHEN), []);
  const jobs = useKept((kept) => kept.jobs);
  const lasting = useKept((kept) => kept.lasting);
  const here = useJob((state) => state.job?.id);
  return (
    <>
      <h2>On this device</h2>
      {jobs.map(({ id, title, changed }) => (
        <div key={id} className="kept">
          <button
            type="button"
            aria-current={id === here}
            onClick={() => {
              close();
              if (id !== here) void openKept(id);
            }}
          >
            {title || 'Untitled job'} <small>{when.format(changed)}</small>
          </button>
          {id !== here && (
            <button
              type="button"
              className="kept-remove"
              aria-label={`Take ${title} off this device`}
              onClick={() => void takeOff({ id, title, changed })}
            >
              <Icon name="close" />
            </button>
          )}
        </div>
      ))}
      {lasting === false && (
        <p className="menu-note">
          The browser may clear these when its disk runs short. Save to a file what must last.
        </p>
      )}
    </>
  );
}

async function takeOff({ id, title }: KeptEntry): Promise<void> {
  const taken = await keeper.remove(id);
  if (taken === undefined) return;
  say({
    tone: 'said',
    text: `“${title}” is off this device.`,
    actions: [
      {
        label: 'put it back',
        act: () => {
          say(null);
          void keeper.putBack(taken);
        },
      },
    ],
  });
}
