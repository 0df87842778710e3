/** A length edited in a sentence: its text as typed, then its unit. A default shows until it is typed over. */
import type { Typed, Units } from '../../job/schema.ts';
import { readLength, saysUnit } from '../../job/units.ts';
import { Field } from './Field.tsx';

export interface LengthFieldProps {
  readonly label: string;
  readonly typed: Typed | undefined;
  /** What stands where nothing is typed. */
  readonly usual?: Typed | undefined;
  readonly placeholder?: string;
  readonly units: Units;
  /** Undefined: emptied. */
  onEnter(typed: Typed | undefined): void;
}

export function LengthField(props: LengthFieldProps) {
  const { label, typed, usual, placeholder = '?', units, onEnter } = props;
  const shown = typed ?? usual;
  const text = shown?.text.trim() ?? '';
  const read = typed === undefined ? null : readLength(typed);
  const fault = read !== null && !read.ok && read.why !== '';
  const unit = saysUnit(text) ? '' : (shown?.unit ?? units);
  return (
    <span className="length-field">
      <Field
        label={label}
        value={text}
        placeholder={placeholder}
        keys={units === 'mm' ? 'decimal' : 'text'}
        usual={typed === undefined && usual !== undefined}
        fault={fault ? read.why : null}
        onEnter={(next) => {
          const same = next === text && typed === undefined;
          if (!same) onEnter(next === '' ? undefined : { text: next, unit: units });
        }}
      />
      {unit !== '' && ` ${unit}`}
    </span>
  );
}
