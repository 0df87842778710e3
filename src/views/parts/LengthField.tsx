/** A length edited in a sentence: its text as typed, then its unit. A default shows until it is typed over. */
import { type Least, lengthFault } from '../../job/lengthFault.ts';
import type { Typed, Units } from '../../job/schema.ts';
import { saysUnit } from '../../job/units.ts';
import { Field } from './Field.tsx';

export interface LengthFieldProps {
  readonly label: string;
  readonly typed: Typed | undefined;
  /** What stands where nothing is typed. */
  readonly usual?: Typed | undefined;
  readonly placeholder?: string;
  readonly units: Units;
  /** How small it may be: smaller says so, and the usual counts. Left out: any. */
  readonly least?: Least;
  /** Undefined: emptied. */
  onEnter(typed: Typed | undefined): void;
}

export function LengthField(props: LengthFieldProps) {
  const { label, typed, usual, placeholder = '?', units, least, onEnter } = props;
  const shown = typed ?? usual;
  const text = shown?.text.trim() ?? '';
  const unit = saysUnit(text) ? '' : (shown?.unit ?? units);
  return (
    <span className="length-field">
      <Field
        label={label}
        value={text}
        placeholder={placeholder}
        keys={units === 'mm' ? 'decimal' : 'text'}
        usual={typed === undefined && usual !== undefined}
        fault={lengthFault(typed, least, usual)}
        onEnter={(next) => {
          const same = next === text && typed === undefined;
          if (!same) onEnter(next === '' ? undefined : { text: next, unit: units });
        }}
      />
      {unit !== '' && ` ${unit}`}
    </span>
  );
}
