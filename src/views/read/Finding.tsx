/** One sentence of what the readings show, its figure set apart. */
import type { Sentence } from '../../figures/sentence.ts';
import { Figure } from '../parts/Figure.tsx';
import { Words } from '../parts/Words.tsx';

export function Finding({ sentence: { before, figure, after } }: { readonly sentence: Sentence }) {
  return (
    <p className="finding">
      <Words text={before} />
      {figure !== '' && (
        <b>
          <Figure text={figure} />
        </b>
      )}
      <Words text={after} />
    </p>
  );
}
