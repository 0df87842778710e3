/** The small picture beside what a term of the trade means. */
import type { ReactNode } from 'react';
import type { TermId } from '../../figures/termNames.ts';
import { TERMS } from '../../figures/terms.ts';
import { LENGTH_PICTURES } from './lengthPictures.tsx';
import { HEIGHT, WIDTH } from './ring.tsx';
import { ROUND_PICTURES } from './roundPictures.tsx';
import { SIZE_PICTURES } from './sizePictures.tsx';

const PICTURES: Readonly<Record<TermId, () => ReactNode>> = {
  ...ROUND_PICTURES,
  ...SIZE_PICTURES,
  ...LENGTH_PICTURES,
};

export function TermPicture({ term }: { readonly term: TermId }) {
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`Picture: ${TERMS[term].name}`}
      fontFamily="var(--font-text)"
    >
      {PICTURES[term]()}
    </svg>
  );
}
