/** The drawing of the survey on the bench, of its other reading, or of two stages that are compared. */
import type { Theme } from '../../figures/colour.ts';
import type { Worked } from '../plan/worked.ts';
import { Drawing } from '../scene/Drawing.tsx';
import { useOtherReading } from '../scene/useOtherReading.ts';
import { useWayShown } from '../scene/useWayShown.ts';
import { WayBand } from '../scene/WayBand.tsx';
import { CompareBand } from './CompareBand.tsx';
import { useDrawnPair, usePair } from './useCompared.ts';

interface Props {
  readonly bench: Worked;
  readonly theme: Theme;
}

export function ComparedDrawing({ bench, theme }: Props) {
  const { drawn, other } = useOtherReading(bench);
  const pair = usePair(bench);
  const compared = useDrawnPair(pair, bench);
  const way = useWayShown(bench);
  return (
    <>
      <CompareBand pair={pair} />
      {compared === null && way !== null && <WayBand />}
      <Drawing
        bore={bench.boreSeen}
        survey={compared ?? way ?? drawn}
        units={bench.job.units}
        theme={theme}
        other={compared === null && way === null ? other : null}
      />
    </>
  );
}
