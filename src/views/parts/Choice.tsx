/** A choice among few, made where it stands in the sentence. */
export interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  onChoose(value: T): void;
}

export function Choice<T extends string>({ label, value, options, onChoose }: ChoiceProps<T>) {
  return (
    <select
      className="choice"
      aria-label={label}
      value={value}
      onChange={(event) => {
        const chosen = options.find((option) => option.value === event.target.value);
        if (chosen !== undefined) onChoose(chosen.value);
      }}
    >
      {options.map((option) => (
        <option key={option.value} value={option.value}>
          {option.text}
        </option>
      ))}
    </select>
  );
}
