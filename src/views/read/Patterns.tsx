/** What wore: each pattern with its evidence, likely causes and what to look at next; or why none is named. */

import type { BoreEvaluation, SurveyEvaluation } from '../../evaluate.ts';
import { entryOf } from '../../figures/galleryMatch.ts';
import { adviceOf, type PatternSaid, whatWore } from '../../figures/patternWords.ts';
import type { Units } from '../../job/schema.ts';
import { galleryHash } from '../../store/gallery.ts';
import { Words } from '../parts/Words.tsx';

export interface PatternsProps {
  readonly survey: SurveyEvaluation;
  readonly bore: BoreEvaluation;
  readonly units: Units;
}

export function Patterns({ survey, bore, units }: PatternsProps) {
  const wore = whatWore(survey, bore, units);
  if (wore === null) return null;
  return (
    <>
      <h3>What wore</h3>
      {wore.patterns.map((one) => (
        <OnePattern key={one.name} said={one} />
      ))}
      {wore.open.map((text) => (
        <p key={text} className="finding">
          <Words text={text} />
        </p>
      ))}
      <p className="soft">{wore.eyes}</p>
    </>
  );
}

function OnePattern({ said }: { readonly said: PatternSaid }) {
  return (
    <div className="pattern">
      <p className="finding">
        <b>
          <Words text={`${said.title}.`} />
        </b>{' '}
        <Words text={said.evidence} />
      </p>
      <p className="soft">
        <Words text={adviceOf(said).join(' ')} />{' '}
        <a href={galleryHash(entryOf(said.name))}>See it among the wear patterns</a>
      </p>
    </div>
  );
}
