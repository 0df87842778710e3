/** What of the fit is told of the whole bore or job, each part folded behind its own line. */
import type { FitAnswer } from '../../evaluate/fit.ts';
import { metalsLine, onePinLine, orderLine, sideGapLine } from '../../figures/fitWholeLines.ts';
import { orderSteps } from '../../figures/orderWords.ts';
import type { Worked } from '../plan/worked.ts';
import { FitFold } from './FitFold.tsx';
import { foldId } from './goTo.ts';
import { MaterialsPart } from './MaterialsPart.tsx';
import { OnePinPart } from './OnePinPart.tsx';
import { OrderPart } from './OrderPart.tsx';
import { SideGapPart } from './SideGapPart.tsx';

interface Props {
  readonly bench: Worked;
  readonly found: FitAnswer;
}

export function WholeParts({ bench, found }: Props) {
  const { job, bore } = bench;
  const { onePin, side } = found;
  const steps = orderSteps(found, onePin, job, bore);
  const done = bore.decisions.fit?.done ?? [];
  const id = (part: string) => foldId(bore.id, 'whole', part);
  return (
    <div className="fit-whole">
      {onePin !== null && (
        <FitFold
          id={id('one-pin')}
          level={3}
          title="Several bores on one pin"
          line={onePinLine(onePin, job.units)}
        >
          <OnePinPart bench={bench} found={onePin} />
        </FitFold>
      )}
      <FitFold id={id('side')} level={3} title="Side gap" line={sideGapLine(found, job.units)}>
        <SideGapPart bench={bench} found={side} />
      </FitFold>
      <FitFold id={id('order')} level={3} title="Order of the work" line={orderLine(steps, done)}>
        <OrderPart bench={bench} steps={steps} />
      </FitFold>
      <FitFold
        id={id('metals')}
        level={3}
        title="Metals and their figures"
        line={metalsLine(found)}
      >
        <MaterialsPart bench={bench} found={found} />
      </FitFold>
    </div>
  );
}
