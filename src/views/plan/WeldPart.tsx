/** Weld build-up: how much metal, in which order, and after it what is still too low. */
import { weldStage, weldWords } from '../../figures/weldWords.ts';
import { HotGate } from './HotGate.tsx';
import type { PartProps } from './partProps.ts';
import { Said } from './Said.tsx';
import { WeldGiven } from './WeldGiven.tsx';
import { WeldMap } from './WeldMap.tsx';
import { WeldOrder } from './WeldOrder.tsx';

export function WeldPart({ bench, found }: PartProps) {
  const { job, survey, surveySeen, boreSeen } = bench;
  const stage = weldStage(surveySeen, survey.stage);
  const words = weldWords(found, stage, boreSeen.facts.length.mm, job.units);
  return (
    <>
      {words.low.length > 0 && <Said lines={words.low} />}
      <Said lines={words.metal} />
      <WeldGiven
        bench={bench}
        wholly="over the whole seat"
        above="(where it is ground by hand, 0.030 to 0.060 in or 1 to 1.5 mm is usual)"
      />
      <WeldMap bench={bench} found={found} stage={stage} />
      <HotGate bench={bench} way="weld">
        <Said lines={words.steps} steps />
        <WeldOrder order={found.weld.order} />
      </HotGate>
    </>
  );
}
