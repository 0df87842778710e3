/** The chosen size of target in one sentence: what it costs, what it holds, what it leaves open. */
import type { Sentence } from '../../figures/sentence.ts';
import { tradeOffWords } from '../../figures/tradeOffWords.ts';
import { Figure, type FigureProps } from '../parts/Figure.tsx';
import type { Worked } from './worked.ts';

export function SizeWords({ bench }: { readonly bench: Worked }) {
  const { boreSeen, surveySeen, job } = bench;
  const { target, removal, seating } = surveySeen;
  if (target === null || removal === null || seating === null) return null;
  const { bushingOutside } = boreSeen.facts;
  const words = tradeOffWords(target, removal, seating, bushingOutside.mm, job.units);
  return (
    <p className="trade-off-words" aria-live="polite">
      At <Figure text={words.size} />: <Part said={words.off} tone="take-off" />,{' '}
      <Part said={words.held} />, <Part said={words.gap} tone="short" />
      {words.suit}.
    </p>
  );
}

interface PartProps {
  readonly said: Sentence;
  readonly tone?: FigureProps['tone'];
}

function Part({ said: { before, figure, after }, tone }: PartProps) {
  return (
    <>
      {before}
      {figure !== '' && (
        <b>
          <Figure text={figure} {...(tone && { tone })} />
        </b>
      )}
      {after}
    </>
  );
}
