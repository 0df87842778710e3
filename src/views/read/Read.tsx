/** Read: what the readings show, depth by depth, and what they cannot tell. */

import { shapeSentences } from '../../figures/shapeWords.ts';
import type { Bench } from '../../store/bench.ts';
import { Figure } from '../parts/Figure.tsx';
import { Remarks } from '../parts/Remarks.tsx';
import { Words } from '../parts/Words.tsx';
import { FilledIn } from './FilledIn.tsx';
import { Patterns } from './Patterns.tsx';
import { SectionTable } from './SectionTable.tsx';

export function Read({ bench }: { readonly bench: Bench }) {
  const { surveySeen, boreSeen, job } = bench;
  return (
    <>
      <h2 id="read-head">Read</h2>
      {surveySeen === null || boreSeen === null ? (
        <p className="soft">Working it out…</p>
      ) : (
        <>
          {shapeSentences(surveySeen, boreSeen.facts.length.mm, job.units).map((sentence) => (
            <p key={sentence.before + sentence.after} className="finding">
              <Words text={sentence.before} />
              {sentence.figure !== '' && (
                <b>
                  <Figure text={sentence.figure} />
                </b>
              )}
              <Words text={sentence.after} />
            </p>
          ))}
          {surveySeen.sections.length > 0 && (
            <SectionTable sections={surveySeen.sections} units={job.units} />
          )}
          <Patterns survey={surveySeen} bore={boreSeen} units={job.units} />
          <Remarks remarks={surveySeen.notes.filter(({ kind }) => kind !== 'assumed')} />
          <Remarks head="What these readings cannot tell" remarks={surveySeen.blindSpots} />
          {surveySeen.surface !== null && (
            <FilledIn bench={bench} smoothness={surveySeen.surface.smoothness} />
          )}
        </>
      )}
    </>
  );
}
