/** A number or a name edited where it stands in the sentence. */
import { useId } from 'react';
import { sentence } from '../../store/attempt.ts';
import { useDraft } from './useDraft.ts';

export interface FieldProps {
  /** What it is, for those who cannot see the sentence around it. */
  readonly label: string;
  readonly value: string;
  readonly placeholder?: string;
  /** Numbers stand in the fixed-width face. */
  readonly kind?: 'number' | 'words';
  /** Keys that a phone shows; the number keys lack the stroke of a fraction and the colon of a clock. */
  readonly keys?: 'decimal' | 'text';
  /** True where the value is the trade's default and not the repairer's own. */
  readonly usual?: boolean;
  /** What is wrong with it, as a sentence's beginning; null or left out: nothing. */
  readonly fault?: string | null;
  onEnter(text: string): void;
}

export function Field(props: FieldProps) {
  const {
    label,
    value,
    placeholder = '',
    kind = 'number',
    keys = 'text',
    usual,
    fault = null,
    onEnter,
  } = props;
  const { draft, shown, setDraft, enter, onKeyDown } = useDraft(value, onEnter);
  const faultId = useId();
  const room = Math.max(shown.length, shown === '' ? placeholder.length : 2, 2);
  return (
    <>
      <input
        className="field"
        data-kind={kind}
        data-usual={usual === true && draft === null}
        data-typing={draft !== null}
        // A letter of the text's face has no one width: there the field fits itself to its text.
        style={kind === 'number' ? { width: `calc(${room}ch + 0.7em)` } : undefined}
        size={room}
        type="text"
        inputMode={keys}
        autoComplete="off"
        spellCheck={false}
        aria-label={label}
        aria-invalid={fault !== null}
        aria-describedby={fault === null ? undefined : faultId}
        placeholder={placeholder}
        value={shown}
        onChange={(event) => setDraft(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={enter}
        onKeyDown={onKeyDown}
      />
      {fault !== null && (
        <span id={faultId} className="fault" role="status">
          {sentence(fault)}
        </span>
      )}
    </>
  );
}
