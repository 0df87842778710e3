/** A figure with its words: the number in the fixed-width face, `in across` and the like in the text's. */
export interface FigureProps {
  /** `0.0031 in per side`: a number, its unit, and what it counts. */
  readonly text: string;
  readonly tone?: 'take-off' | 'short';
}

export function Figure({ text, tone }: FigureProps) {
  const [number, unit = '', ...words] = text.split(' ');
  return (
    <span className={tone}>
      <span className="figure">
        <span className="number">{number}</span>
        {unit !== '' && ` ${unit}`}
      </span>
      {words.length > 0 && ` ${words.join(' ')}`}
    </span>
  );
}
