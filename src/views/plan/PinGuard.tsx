/** Threads, grease passages and faces to be guarded: ticked off one by one, and where they are told. */
import { guardList } from '../../figures/pinWork.ts';
import { setKeepout } from '../../job/edits.ts';
import { useJob } from '../../store/useJob.ts';
import { KeepOff } from '../measure/KeepOff.tsx';
import type { Worked } from './worked.ts';

export function PinGuard({ bench }: { readonly bench: Worked }) {
  const edit = useJob((state) => state.edit);
  const { job, bore } = bench;
  return (
    <>
      <h3>To be covered, plugged or left alone</h3>
      <ul className="pin-guard">
        {guardList(bore.keepouts, job.units).map(({ id, what, how, done }) => (
          <li key={id}>
            <label>
              <input
                type="checkbox"
                checked={done}
                onChange={({ currentTarget }) =>
                  edit((now) =>
                    setKeepout(now, bore.id, id, {
                      guarded: currentTarget.checked ? true : undefined,
                    }),
                  )
                }
              />
              <span>
                {what}: {how}.
              </span>
            </label>
          </li>
        ))}
      </ul>
      <KeepOff bench={bench} />
    </>
  );
}
