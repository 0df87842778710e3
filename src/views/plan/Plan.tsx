/** Plan: the target, what to take off where, and what must be known before any heat. */
import { lazy, memo, Suspense, useMemo } from 'react';
import { isOfBushing } from '../../job/measuredAt.ts';
import type { Bench } from '../../store/bench.ts';
import { useRested } from '../../store/useRested.ts';
import { Amounts } from './Amounts.tsx';
import { AssumedSide } from './AssumedSide.tsx';
import { TargetChoice } from './TargetChoice.tsx';
import { WayChoice } from './WayChoice.tsx';
import type { Worked } from './worked.ts';
import { Zones } from './Zones.tsx';

const Centres = lazy(() => import('./Centres.tsx'));
const Passes = lazy(() => import('./Passes.tsx'));
const PinPart = lazy(() => import('./PinPart.tsx'));
const BuildUp = lazy(() => import('./BuildUp.tsx'));

export function Plan({ bench }: { readonly bench: Bench }) {
  const { surveySeen, boreSeen } = bench;
  return (
    <>
      <h2 id="plan-head">Plan</h2>
      {bench.bore.kind === 'pin' ? (
        <Suspense fallback={<p className="soft">Working it out…</p>}>
          <PinPart bench={bench} />
        </Suspense>
      ) : bench.bore.kind !== 'bore' ? (
        <p>
          A bushing is measured here and not ground: it has no target and no removal map. What it
          shows of the joint stands under Read.
        </p>
      ) : boreSeen === null || surveySeen === null ? (
        <p className="soft">Working it out…</p>
      ) : (
        <Planned {...{ bench, boreSeen, surveySeen }} />
      )}
    </>
  );
}

interface PlannedProps extends Pick<Worked, 'boreSeen' | 'surveySeen'> {
  readonly bench: Bench;
}

function Planned({ bench: seen, boreSeen, surveySeen }: PlannedProps) {
  const bench = useMemo<Worked>(
    () => ({ ...seen, boreSeen, surveySeen }),
    [seen, boreSeen, surveySeen],
  );
  const rested = useRested(bench);
  const byHand = bench.bore.decisions.centre?.rule === 'by-hand';
  const { surface, target, removal } = bench.surveySeen;
  if (isOfBushing(bench.bore, bench.survey)) {
    return (
      <p>
        Here the bushing’s own bore is read, once it was pressed in: the plan is of the bore behind
        it, and stands with the stages before. What these readings leave the pin stands under Fit.
      </p>
    );
  }
  if (surface === null) {
    return <p className="soft">The plan follows the first readings that can be used.</p>;
  }
  if (target === null || removal === null) {
    return (
      <>
        <p>
          Give the bushing’s outside diameter above: the target is that less the press fit, and the
          plan follows. Or choose a size here, and have a bushing made to suit.
        </p>
        <TargetChoice bench={bench} target={null} />
      </>
    );
  }
  return (
    <>
      <TargetChoice bench={bench} target={target} />
      <Centre bench={byHand ? bench : rested} />
      {target.assumed !== null && <AssumedSide bench={bench} />}
      <Amounts removal={removal} surface={surface} />
      <Zones bore={bench.bore} survey={surveySeen} facts={boreSeen.facts} units={bench.job.units} />
      <Mending bench={rested} />
    </>
  );
}

/** What the rules cost is worked out once the hand rests; only a centre set by hand follows it. */
const Centre = memo(function Centre({ bench }: { readonly bench: Worked }) {
  return (
    <Suspense fallback={<div style={{ minHeight: '32rem' }} />}>
      <Centres bench={bench} />
    </Suspense>
  );
});

/** Pass by pass and way by way: too much to follow the handle of the size at every step. */
const Mending = memo(function Mending({ bench }: { readonly bench: Worked }) {
  return (
    <>
      <Suspense fallback={<div style={{ minHeight: '30rem' }} />}>
        <Passes bench={bench} />
      </Suspense>
      <WayChoice bench={bench} />
      <Suspense fallback={null}>
        <BuildUp bench={bench} />
      </Suspense>
    </>
  );
});
