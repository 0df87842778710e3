/** Weld build-up: how much metal, in which order, and after it what is still too low. */
import { weldStage, weldWords } from '../../figures/weldWords.ts';
import { setMending } from '../../job/edits.ts';
import { USUAL_OVERLAP } from '../../job/mendingFacts.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { HotGate } from './HotGate.tsx';
import { MendingLength, PlainNumber, WayLength } from './mendingFields.tsx';
import type { PartProps } from './partProps.ts';
import { Said } from './Said.tsx';

const OVER = [
  { value: 'seat', text: 'over the whole seat' },
  { value: 'low', text: 'where it is low only' },
] as const;

const ELECTRODES = [
  { value: '2.5', text: '2.5 mm (3/32 in)' },
  { value: '3.2', text: '3.2 mm (1/8 in)' },
  { value: '4.0', text: '4.0 mm (5/32 in)' },
] as const;

export function WeldPart({ bench, found }: PartProps) {
  const { job, survey, surveySeen, boreSeen } = bench;
  const stage = weldStage(surveySeen, survey.stage);
  const words = weldWords(found, stage, boreSeen.facts.length.mm, job.units);
  return (
    <>
      {words.low.length > 0 && <Said lines={words.low} />}
      <Said lines={words.metal} />
      <Given bench={bench} found={found} />
      <HotGate bench={bench} way="weld">
        <Said lines={words.steps} steps />
      </HotGate>
    </>
  );
}

function Given({ bench }: PartProps) {
  const edit = useJob((state) => state.edit);
  const { bore } = bench;
  const { weld = {} } = bore.decisions;
  const of = { bench, way: 'weld' } as const;
  return (
    <p className="facts">
      Weld{' '}
      <Choice
        label="Where weld goes on"
        value={weld.over ?? 'seat'}
        options={OVER}
        onChoose={(over) => edit((now) => setMending(now, bore.id, 'weld', 'over', over))}
      />
      ,{' '}
      <WayLength bench={bench} of="weldAllowance" label="Weld above the finished size, per side" />{' '}
      per side above the finished size (where it is ground by hand, 0.030 to 0.060 in or 1 to 1.5 mm
      is usual), with electrodes of{' '}
      <Choice
        label="Electrode"
        value={weld.electrode ?? '3.2'}
        options={ELECTRODES}
        onChoose={(one) => edit((now) => setMending(now, bore.id, 'weld', 'electrode', one))}
      />
      , beads <MendingLength {...of} of="beadHeight" usual="beadHeight" label="Height of a bead" />{' '}
      high and <MendingLength {...of} of="beadWidth" usual="beadWidth" label="Width of a bead" />{' '}
      wide that lap by{' '}
      <PlainNumber
        label="How much of a bead lies on the one before, per cent"
        text={weld.overlap}
        usual={String(USUAL_OVERLAP)}
        onEnter={(text) => edit((now) => setMending(now, bore.id, 'weld', 'overlap', text))}
      />{' '}
      %. Carbon equivalent of the steel{' '}
      <PlainNumber
        label="Carbon equivalent of the steel, per cent"
        text={weld.carbon}
        onEnter={(text) => edit((now) => setMending(now, bore.id, 'weld', 'carbon', text))}
      />{' '}
      %.
    </p>
  );
}
