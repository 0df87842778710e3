/** What a build-up is welded with: where, how high, electrodes, beads, and the steel. */
import { setMending } from '../../job/edits.ts';
import { USUAL_OVERLAP } from '../../job/mendingFacts.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { MendingLength, PlainNumber, WayLength } from './mendingFields.tsx';
import { SteelLine } from './SteelLine.tsx';
import type { Worked } from './worked.ts';

const LOW_ONLY = 'where it is low only';

const ELECTRODES = [
  { value: '2.5', text: '2.5 mm (3/32 in)' },
  { value: '3.2', text: '3.2 mm (1/8 in)' },
  { value: '4.0', text: '4.0 mm (5/32 in)' },
] as const;

interface Props {
  readonly bench: Worked;
  /** Welding all of it, in the words of the part; null where only what is low is left to weld. */
  readonly wholly: string | null;
  /** What stands above the finished size, and why. */
  readonly above: string;
}

export function WeldGiven({ bench, wholly, above }: Props) {
  const edit = useJob((state) => state.edit);
  const { bore } = bench;
  const { weld = {} } = bore.decisions;
  const of = { bench, way: 'weld' } as const;
  return (
    <>
      <p className="facts">
        Weld{' '}
        {wholly === null ? (
          LOW_ONLY
        ) : (
          <Choice
            label="Where weld goes on"
            value={weld.over ?? 'seat'}
            options={[
              { value: 'seat', text: wholly },
              { value: 'low', text: LOW_ONLY },
            ]}
            onChoose={(over) => edit((now) => setMending(now, bore.id, 'weld', 'over', over))}
          />
        )}
        ,{' '}
        <WayLength
          bench={bench}
          of="weldAllowance"
          label="Weld above the finished size, per side"
        />{' '}
        per side above the finished size {above}, with electrodes of{' '}
        <Choice
          label="Electrode"
          value={weld.electrode ?? '3.2'}
          options={ELECTRODES}
          onChoose={(one) => edit((now) => setMending(now, bore.id, 'weld', 'electrode', one))}
        />
        , beads{' '}
        <MendingLength {...of} of="beadHeight" usual="beadHeight" label="Height of a bead" /> high
        and <MendingLength {...of} of="beadWidth" usual="beadWidth" label="Width of a bead" /> wide
        that lap by{' '}
        <PlainNumber
          label="How much of a bead lies on the one before, per cent"
          text={weld.overlap}
          usual={String(USUAL_OVERLAP)}
          onEnter={(text) => edit((now) => setMending(now, bore.id, 'weld', 'overlap', text))}
        />{' '}
        %.
      </p>
      <SteelLine bench={bench} />
    </>
  );
}
