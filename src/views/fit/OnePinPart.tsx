/** Several bores on one pin: readings from a straight bar, the largest pin that passes, and who stands off the line. */
import { OnePinView } from '../../drawings/OnePinView.tsx';
import { onePinViews } from '../../figures/onePinFigure.ts';
import {
  offLineWords,
  onePinMissing,
  onePinWords,
  throughWords,
} from '../../figures/onePinWords.ts';
import { placeBeside } from '../../job/partnerEdits.ts';
import type { useFit } from '../../store/fit.ts';
import { useTheme } from '../../store/theme.ts';
import { useJob } from '../../store/useJob.ts';
import { Said } from '../plan/Said.tsx';
import type { Worked } from '../plan/worked.ts';
import { BarReadings } from './BarReadings.tsx';

type Found = NonNullable<NonNullable<ReturnType<typeof useFit.getState>['shown']>['onePin']>;

interface Props {
  readonly bench: Worked;
  readonly found: Found;
}

export function OnePinPart({ bench, found }: Props) {
  const { units } = bench.job;
  const missing = onePinMissing(found);
  return (
    <>
      <Said lines={[...onePinWords(found, units), ...offLineWords(found, units)]} />
      <Pictures found={found} />
      {missing.length > 0 && <Said lines={missing} />}
      <details className="way-fold">
        <summary>Read how the bores stand to each other</summary>
        <div className="way-fold-in">
          <BarReadings bench={bench} />
          <TakeOver found={found} />
          <h4>What the pin meets in each bore</h4>
          <Said lines={throughWords(found, units)} />
        </div>
      </details>
    </>
  );
}

function Pictures({ found }: { readonly found: Found }) {
  const theme = useTheme((state) => state.shown);
  const views = onePinViews(found);
  if (views === null) return null;
  return (
    <figure className="one-pin">
      {views.map((view) => (
        <OnePinView key={view.top} view={view} theme={theme} />
      ))}
      <figcaption>
        The largest straight pin in its bores, from the side and from above. Along the pin to scale;
        the air beside it is exaggerated.
      </figcaption>
    </figure>
  );
}

/** What was read becomes the places of the bores, so that the plan can line a bore up with its partner. */
function TakeOver({ found }: { readonly found: Found }) {
  const edit = useJob((state) => state.edit);
  const read = found.holes.filter(({ placed }) => placed.from === 'bar');
  if (read.length === 0) return null;
  const take = () =>
    edit((job) =>
      read.reduce((now, { id, placed: { x, y, leanX, leanY, length } }) => {
        return placeBeside(now, id, { x, y, leanX: leanX * length, leanY: leanY * length });
      }, job),
    );
  return (
    <button type="button" className="plain-button" onClick={take}>
      Let the plan go by these places
    </button>
  );
}
