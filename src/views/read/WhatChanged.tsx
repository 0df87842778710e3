/** What changed between the two stages that are compared, in words; nothing while none are. */
import { useMemo } from 'react';
import { drawnChange, stageChange } from '../../figures/stageChange.ts';
import { stageSentences } from '../../figures/stageWords.ts';
import { stepsOf, wallOf } from '../../figures/wall.ts';
import { leaveCompare } from '../../store/compare.ts';
import { type Pair, usePair } from '../compare/useCompared.ts';
import type { Worked } from '../plan/worked.ts';
import '../compare/compare.css';
import { Finding } from './Finding.tsx';

export default function WhatChanged({ bench }: { readonly bench: Worked }) {
  const pair = usePair(bench);
  if (pair === null) return null;
  return (
    <div className="what-changed">
      <h3>
        From {pair.before.name} to {pair.after.name}
      </h3>
      {pair.why === null ? <Sentences bench={bench} pair={pair} /> : <p>{pair.why}</p>}
      <button type="button" className="link-button" onClick={leaveCompare}>
        back to {bench.survey.name} alone
      </button>
    </div>
  );
}

function Sentences({ bench, pair }: { readonly bench: Worked; readonly pair: Pair }) {
  const { bore, job } = bench;
  const kind = bore.surveys[pair.at[1]]!.stage;
  const sentences = useMemo(() => {
    const change = stageChange(pair.before, pair.after);
    const { step } = stepsOf(wallOf(drawnChange(change))!, job.units);
    return stageSentences(change, kind, step, job.units);
  }, [pair, kind, job.units]);
  return sentences.map((sentence) => (
    <Finding key={sentence.before + sentence.figure} sentence={sentence} />
  ));
}
