/** Read: what the readings show, depth by depth, and what they cannot tell. */
import { lazy, Suspense } from 'react';
import { outsideSentences } from '../../figures/outsideWords.ts';
import { shapeSentences } from '../../figures/shapeWords.ts';
import type { Bench } from '../../store/bench.ts';
import { useSession } from '../../store/session.ts';
import { Remarks } from '../parts/Remarks.tsx';
import type { Worked } from '../plan/worked.ts';
import { FilledIn } from './FilledIn.tsx';
import { Finding } from './Finding.tsx';
import { JointTable } from './JointTable.tsx';
import { Patterns } from './Patterns.tsx';
import { SectionTable } from './SectionTable.tsx';

const Cylinders = lazy(() => import('./Cylinders.tsx'));
const WhatChanged = lazy(() => import('./WhatChanged.tsx'));

export function Read({ bench }: { readonly bench: Bench }) {
  const { surveySeen, boreSeen } = bench;
  return (
    <>
      <h2 id="read-head">Read</h2>
      {surveySeen === null || boreSeen === null ? (
        <p className="soft">Working it out…</p>
      ) : (
        <Shown bench={{ ...bench, boreSeen, surveySeen }} />
      )}
    </>
  );
}

function Shown({ bench }: { readonly bench: Worked }) {
  const { surveySeen, boreSeen, bore, job, joint } = bench;
  const comparing = useSession((session) => session.ghost !== null);
  const outside = bore.kind === 'pin' || bore.kind === 'bushing-outside';
  const say = outside ? outsideSentences : shapeSentences;
  return (
    <>
      {!outside && comparing && (
        <Suspense>
          <WhatChanged bench={bench} />
        </Suspense>
      )}
      {say(surveySeen, boreSeen.facts.length.mm, job.units).map((sentence) => (
        <Finding key={sentence.before + sentence.after} sentence={sentence} />
      ))}
      {surveySeen.sections.length > 0 && (
        <SectionTable sections={surveySeen.sections} units={job.units} />
      )}
      {!outside && surveySeen.plugs?.bore && (
        <Suspense fallback={null}>
          <Cylinders bench={bench} plugs={surveySeen.plugs} />
        </Suspense>
      )}
      {!outside && <Patterns survey={surveySeen} bore={boreSeen} units={job.units} />}
      <JointTable joint={joint} units={job.units} />
      <Remarks remarks={surveySeen.notes.filter(({ kind }) => kind !== 'assumed')} />
      <Remarks head="What these readings cannot tell" remarks={surveySeen.blindSpots} />
      {surveySeen.surface !== null && (
        <FilledIn bench={bench} smoothness={surveySeen.surface.smoothness} />
      )}
    </>
  );
}
