/** The fit of one bushing: the answers first, then each part folded behind its own line. */
import { type BushingPartName, PART_TITLES } from '../../figures/fitAnswers.ts';
import { bushingLines } from '../../figures/fitLines.ts';
import { fitHead } from '../../figures/fitWords.ts';
import { hotWork } from '../../job/safety.ts';
import { ClockPart } from './ClockPart.tsx';
import { FitFold } from './FitFold.tsx';
import { FitShort } from './FitShort.tsx';
import type { FitProps } from './fitProps.ts';
import { foldId } from './goTo.ts';
import { HeatPart } from './HeatPart.tsx';
import { PressPart } from './PressPart.tsx';
import { RoundPart } from './RoundPart.tsx';
import { RunningPart } from './RunningPart.tsx';
import { SizesLine } from './SizesLine.tsx';

const PARTS = {
  press: PressPart,
  round: RoundPart,
  running: RunningPart,
  heat: HeatPart,
  clock: ClockPart,
} as const;

/** In the order of the work. */
const ORDER = ['press', 'round', 'running', 'heat', 'clock'] as const satisfies BushingPartName[];

export function OneBushing(props: FitProps) {
  const { bench, found, one } = props;
  const { job, bore } = bench;
  const { open } = hotWork(job.safety);
  const { seated } = one;
  const lines = bushingLines(one, job.units, open);
  return (
    <section>
      <h3>{seated.name}</h3>
      <p>{fitHead(seated, job.units)}</p>
      <FitShort
        {...{ one, open }}
        bore={bore.id}
        first={found.bushings[0]!.seated.id}
        units={job.units}
      />
      <SizesLine {...props} />
      {ORDER.map((part) => {
        const Part = PARTS[part];
        return (
          <FitFold
            key={part}
            id={foldId(bore.id, seated.id, part)}
            level={4}
            title={PART_TITLES[part]}
            line={lines[part]}
          >
            <Part {...props} />
          </FitFold>
        );
      })}
    </section>
  );
}
