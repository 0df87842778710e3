/** Figures of heat and cold, edited where they stand in a sentence. */
import { setHeat } from '../../job/edits.ts';
import { degreesOf, USUAL_HEAT_FIGURES } from '../../job/heatFacts.ts';
import type { HeatFigures, Warmth } from '../../job/heatSchema.ts';
import { type Degrees, readDegrees } from '../../job/temperature.ts';
import { useJob } from '../../store/useJob.ts';
import { Field } from '../parts/Field.tsx';
import { PlainNumber } from '../plan/mendingFields.tsx';
import type { Worked } from '../plan/worked.ts';

interface WarmProps {
  readonly label: string;
  readonly warmth: Warmth | undefined;
  /** What stands where nothing is typed, in the degrees of the job; left out: nothing is usual. */
  readonly usual?: string;
  readonly unit: Degrees;
  onEnter(warmth: Warmth | undefined): void;
}

/** A temperature with its degree. */
export function WarmField({ label, warmth, usual, unit, onEnter }: WarmProps) {
  const text = warmth?.text ?? usual ?? '';
  const read = readDegrees(text, warmth?.unit ?? unit);
  return (
    <span className="unbroken">
      <Field
        label={label}
        value={text}
        placeholder="?"
        usual={warmth === undefined && usual !== undefined}
        fault={warmth === undefined || read.ok || read.why === '' ? null : read.why}
        onEnter={(next) => {
          if (next === text && warmth === undefined) return;
          onEnter(next.trim() === '' ? undefined : { text: next.slice(0, 20), unit });
        }}
      />
      {!/[CF]$/i.test(text) && ` °${warmth?.unit ?? unit}`}
    </span>
  );
}

interface OfJob {
  readonly bench: Worked;
  readonly label: string;
}

interface WarmFigureProps extends OfJob {
  readonly of: 'bushing' | 'shop' | 'boss' | 'limit' | 'bushingLimit';
  readonly usual?: string;
}

export function WarmFigure({ bench: { job, bore }, of, label, usual }: WarmFigureProps) {
  const edit = useJob((state) => state.edit);
  return (
    <WarmField
      label={label}
      warmth={bore.decisions.fit?.heat?.[of]}
      {...(usual === undefined ? {} : { usual })}
      unit={degreesOf(job.units)}
      onEnter={(warmth) => edit((now) => setHeat(now, bore.id, of, warmth))}
    />
  );
}

interface PlainFigureProps extends OfJob {
  readonly of: keyof typeof USUAL_HEAT_FIGURES | 'contact';
}

export function PlainFigure({ bench: { bore }, of, label }: PlainFigureProps) {
  const edit = useJob((state) => state.edit);
  const figures: HeatFigures = bore.decisions.fit?.heat ?? {};
  return (
    <PlainNumber
      label={label}
      text={figures[of]}
      {...(of === 'contact' ? {} : { usual: USUAL_HEAT_FIGURES[of] })}
      onEnter={(text) => edit((now) => setHeat(now, bore.id, of, text))}
    />
  );
}
