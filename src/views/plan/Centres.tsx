/** About which centre the bore is made round again: what each rule costs, and the figures that a rule asks for. */
import { useEffect, useMemo, useRef } from 'react';
import type { CentreCost } from '../../evaluate/centreCost.ts';
import type { Centres as CentresFound } from '../../evaluate/centres.ts';
import { centreOffers, sayCentre } from '../../figures/centreWords.ts';
import type { Units } from '../../job/schema.ts';
import { centresNow, takeCentre, useCentres, wantCentres } from '../../store/centres.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';
import { useRested } from '../../store/useRested.ts';
import { Words } from '../parts/Words.tsx';
import { useSize } from '../useSize.ts';
import { CentreCards } from './CentreCards.tsx';
import { CentreTable } from './CentreTable.tsx';
import { HandAxis } from './HandAxis.tsx';
import { PinLine } from './PinLine.tsx';
import { UnwornMetal } from './UnwornMetal.tsx';
import type { Worked } from './worked.ts';
import './sideBySide.css';
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
  const root = useRef<HTMLDivElement>(null);
  const { width } = useSize(root);
  const List = width >= TABLE_FROM ? CentreTable : CentreCards;
  return (
    <div className="centre-choice" role="radiogroup" aria-labelledby="centre-head" ref={root}>
      <h3 id="centre-head">Centre</h3>
      {width > 0 && (
        <List {...{ offers, chosen, units }} onChoose={(rule) => takeCentre(bench, rule)} />
      )}
      {chosen === 'keep' && <UnwornMetal bench={bench} />}
      {chosen === 'by-hand' && <HandAxis bench={bench} />}
      <PinLine bench={bench} />
      {found !== null && cost !== undefined && <Said cost={cost} centres={found} units={units} />}
    </div>
  );
}

/** What the chosen rule comes to; that no partner is known is said in the partner's own line. */
function Said({ cost, centres, units }: SaidProps) {
  const [own, against] = sayCentre(cost, centres, units);
  const said = centres.partner.status === 'known' ? [own, against] : [own];
  return said.map((text) => (
    <p key={text}>
      <Words text={text} />
    </p>
  ));
}

interface SaidProps {
  readonly cost: CentreCost;
  readonly centres: CentresFound;
  readonly units: Units;
}

/** Asks what the rules cost once the hand rests and all is worked out. */
function useAsked(bench: Worked): void {
  const { job, bore, survey } = useRested(bench);
  const settled = useEvaluation((state) => state.settled && state.of === job);
  useEffect(() => {
    if (settled) wantCentres({ job, bore, survey });
  }, [settled, job, bore, survey]);
}
