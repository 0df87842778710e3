/** The target's centre as it is set by hand: where it stands at face A, and how it leans. */
import { type ByHand, setHand } from '../../job/edits.ts';
import { lengthMm } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { Toward } from './Toward.tsx';
import type { Worked } from './worked.ts';

export function HandAxis({ bench: { job, bore } }: { readonly bench: Worked }) {
  const edit = useJob((state) => state.edit);
  const { centre } = bore.decisions;
  const mm = (key: keyof ByHand) => lengthMm(centre?.[key]) || 0;
  const set = (by: ByHand) => edit((now) => setHand(now, bore.id, by));
  return (
    <div className="hand-axis">
      <p className="facts">
        At face A the centre stands{' '}
        <Toward
          label="Centre at face A"
          x={mm('x')}
          y={mm('y')}
          units={job.units}
          onEnter={(x, y) => set({ x, y })}
        />{' '}
        of the middle that the readings are counted from; from there to the bottom it runs off by{' '}
        <Toward
          label="Run-off to the bottom"
          x={mm('leanX')}
          y={mm('leanY')}
          units={job.units}
          onEnter={(leanX, leanY) => set({ leanX, leanY })}
        />
        .
      </p>
      <p className="soft">
        Or take hold of the cross in the drawing’s cut across (on a small screen: Map, then Across)
        and move it; map and costs follow. Arrow keys move it too, with Shift ten times as far.
      </p>
    </div>
  );
}
