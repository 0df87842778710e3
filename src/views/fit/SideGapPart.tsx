/** The room beside the boss along the pin: what is measured, what stands in it, the gap now and after, face shims. */
import { SideStackView } from '../../drawings/SideStackView.tsx';
import { stackFigure } from '../../figures/sideGapFigure.ts';
import { layerRows, sideGapMissing, sideGapWords } from '../../figures/sideGapWords.ts';
import { setSideGap, setSidePlace } from '../../job/edits.ts';
import { usualSideGap } from '../../job/sideGapFacts.ts';
import type { useFit } from '../../store/fit.ts';
import { useTheme } from '../../store/theme.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Said } from '../plan/Said.tsx';
import type { Worked } from '../plan/worked.ts';
import { SideParts } from './SideParts.tsx';

interface Props {
  readonly bench: Worked;
  readonly found: NonNullable<ReturnType<typeof useFit.getState>['shown']>['side'];
}

const FACES = [
  { value: 'as-it-is', text: 'as they are' },
  { value: 'dressed', text: 'once they are dressed square' },
] as const;

export function SideGapPart({ bench, found }: Props) {
  const { job, bore } = bench;
  const edit = useJob((state) => state.edit);
  const theme = useTheme((state) => state.shown);
  const stack = stackFigure(found, job.units);
  const limit = (which: 'least' | 'most', label: string) => (
    <LengthField
      label={label}
      typed={bore.sideGap?.[which]}
      usual={usualSideGap(which, job.units)}
      units={job.units}
      onEnter={(typed) => edit((now) => setSideGap(now, bore.id, which, typed))}
    />
  );
  return (
    <>
      <p>
        Between the ears: <Places bench={bench} of="between" label="Between the ears" />. Over both
        faces of this boss: <Places bench={bench} of="width" label="Over both faces" />.
      </p>
      <p>
        The whole gap is to be at least {limit('least', 'Least side gap')} and at most{' '}
        {limit('most', 'Greatest side gap')}. Worn faces get their washers{' '}
        <Choice
          label="Worn faces get their washers"
          value={bore.sideGap?.faces ?? 'as-it-is'}
          options={FACES}
          onChoose={(faces) =>
            edit((now) =>
              setSideGap(now, bore.id, 'faces', faces === 'as-it-is' ? undefined : faces),
            )
          }
        />
        .
      </p>
      <SideParts bench={bench} />
      <Said lines={[...sideGapWords(found, job.units), ...sideGapMissing(found)]} />
      {stack !== null && (
        <figure className="one-pin">
          <SideStackView stack={stack} theme={theme} />
          <figcaption>
            After the work, to scale along the pin; the boss is cut short and drawn in the middle of
            its room.
          </figcaption>
        </figure>
      )}
      <Layers rows={layerRows(found, job.units)} />
    </>
  );
}

/** What is counted besides the typed sizes, from the boss outward. */
function Layers({ rows }: { readonly rows: ReturnType<typeof layerRows> }) {
  if (rows.length === 0) return null;
  return (
    <Said
      lines={rows.map(
        ({ face, what, thick, when }) => `Beside face ${face}: ${what}, ${thick}, ${when}.`,
      )}
    />
  );
}

interface PlacesProps {
  readonly bench: Worked;
  readonly of: 'between' | 'width';
  readonly label: string;
}

/** Sizes at several places, with an empty field for the next. */
function Places({ bench: { job, bore }, of, label }: PlacesProps) {
  const edit = useJob((state) => state.edit);
  const sizes = bore.sideGap?.[of] ?? [];
  return [...sizes, undefined].map((typed, place) => (
    <span key={place}>
      {place > 0 && ', '}
      <LengthField
        label={`${label}, place ${place + 1}`}
        typed={typed}
        units={job.units}
        onEnter={(next) => edit((now) => setSidePlace(now, bore.id, of, place, next))}
      />
    </span>
  ));
}
