/** Sentences one below the other, as steps or as plain lines. */
import { Words } from '../parts/Words.tsx';

interface Props {
  readonly lines: readonly string[];
  readonly steps?: boolean;
}

export function Said({ lines, steps = false }: Props) {
  const items = lines.map((line) => (
    <li key={line}>
      <Words text={line} />
    </li>
  ));
  return steps ? <ol className="way-steps">{items}</ol> : <ul className="way-lines">{items}</ul>;
}
