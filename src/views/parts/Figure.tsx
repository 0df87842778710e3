/** A figure with its words: the number in the fixed-width face, `in across` and the like in the text's. */
export interface FigureProps {
  /** `0.0031 in per side`: a number, a space, its unit and what it counts. */
  readonly text: string;
  readonly tone?: 'take-off' | 'short';
}

export function Figure({ text, tone }: FigureProps) {
  const at = text.indexOf(' ');
  const [number, words] = at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at)];
  return (
    <span className={tone === undefined ? 'figure' : `figure ${tone}`}>
      <span className="number">{number}</span>
      {words.replace(/^ /, ' ')}
    </span>
  );
}
