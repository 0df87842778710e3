/** About which centre the bore is made round again: what each rule costs, and the figures that a rule asks for. */
import { useEffect, useMemo, useRef } from 'react';
import { centreOffers, sayCentre } from '../../figures/centreWords.ts';
import { centresNow, takeCentre, useCentres, wantCentres } from '../../store/centres.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';
import { useRested } from '../../store/useRested.ts';
import { Words } from '../parts/Words.tsx';
import { useSize } from '../useSize.ts';
import { CentreCards } from './CentreCards.tsx';
import { CentreTable } from './CentreTable.tsx';
import { UnwornMetal } from './UnwornMetal.tsx';
import type { Worked } from './worked.ts';
import './centres.css';

/** From this width on, CSS pixels, the rules stand in a table. */
const TABLE_FROM = 440;

export default function Centres({ bench }: { readonly bench: Worked }) {
  const { units } = bench.job;
  useAsked(bench);
  const state = useCentres();
  const found = useMemo(() => centresNow(state, bench), [state, bench]);
  const offers = useMemo(() => centreOffers(found, units), [found, units]);
  const chosen = bench.bore.decisions.centre?.rule ?? 'free';
  const cost = found?.costs.find(({ rule }) => rule === chosen);
  const root = useRef<HTMLFieldSetElement>(null);
  const { width } = useSize(root);
  const List = width >= TABLE_FROM ? CentreTable : CentreCards;
  return (
    <fieldset className="centre-choice" ref={root}>
      <legend>Centre</legend>
      {width > 0 && (
        <List {...{ offers, chosen, units }} onChoose={(rule) => takeCentre(bench, rule)} />
      )}
      {chosen === 'keep' && <UnwornMetal bench={bench} />}
      {found !== null &&
        cost !== undefined &&
        sayCentre(cost, found, units).map((text) => (
          <p key={text}>
            <Words text={text} />
          </p>
        ))}
    </fieldset>
  );
}

/** Asks what the rules cost once the hand rests and all is worked out. */
function useAsked(bench: Worked): void {
  const { job, bore, survey } = useRested(bench);
  const settled = useEvaluation((state) => state.settled && state.of === job);
  useEffect(() => {
    if (settled) wantCentres({ job, bore, survey });
  }, [settled, job, bore, survey]);
}
