/** Figures of a way of mending, edited where they stand in a sentence. */
import { type MendingWay, setMending, setWayFigure } from '../../job/edits.ts';
import { type USUAL, usualTyped } from '../../job/mendingFacts.ts';
import type { Decisions, Typed, WayFigure } from '../../job/schema.ts';
import { mayBeNone, usualWayFigure } from '../../job/wayFigures.ts';
import { useJob } from '../../store/useJob.ts';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { Worked } from './worked.ts';

type Figures<W extends MendingWay> = NonNullable<Decisions[W]>;

interface LengthProps<W extends MendingWay> {
  readonly bench: Worked;
  readonly way: W;
  readonly of: keyof Figures<W> & string;
  readonly label: string;
  /** Left out: nothing is usual. */
  readonly usual?: keyof typeof USUAL;
  readonly placeholder?: string;
}

export function MendingLength<W extends MendingWay>(props: LengthProps<W>) {
  const { bench, way, of, label, usual, placeholder = '?' } = props;
  const edit = useJob((state) => state.edit);
  const { units } = bench.job;
  const figures = (bench.bore.decisions[way] ?? {}) as Readonly<Record<string, Typed | undefined>>;
  return (
    <LengthField
      label={label}
      typed={figures[of]}
      usual={usual && usualTyped(usual, units)}
      placeholder={placeholder}
      units={units}
      onEnter={(typed) =>
        edit((now) => setMending(now, bench.bore.id, way, of, typed as Figures<W>[typeof of]))
      }
    />
  );
}

interface WayLengthProps {
  readonly bench: Worked;
  readonly of: WayFigure;
  readonly label: string;
}

export function WayLength({ bench: { job, bore }, of, label }: WayLengthProps) {
  const edit = useJob((state) => state.edit);
  return (
    <LengthField
      label={label}
      typed={bore.decisions.wayFigures?.[of]}
      usual={usualWayFigure(of, job.units)}
      units={job.units}
      least={mayBeNone(of) ? 'none' : 'above none'}
      onEnter={(typed) => edit((now) => setWayFigure(now, bore.id, of, typed))}
    />
  );
}

interface NumberProps {
  readonly label: string;
  readonly text: string | undefined;
  /** What stands where nothing is typed; left out: nothing is usual. */
  readonly usual?: string;
  /** What is wrong with it, as a sentence's beginning; left out or null: nothing. */
  readonly fault?: string | null;
  onEnter(text: string | undefined): void;
}

/** A plain number without a unit of length. */
export function PlainNumber({ label, text, usual, fault, onEnter }: NumberProps) {
  return (
    <Field
      label={label}
      value={text ?? usual ?? ''}
      placeholder="?"
      keys="decimal"
      usual={text === undefined && usual !== undefined}
      fault={fault ?? null}
      onEnter={(next) => {
        if (next === usual && text === undefined) return;
        onEnter(next.trim() === '' ? undefined : next.slice(0, 20));
      }}
    />
  );
}
