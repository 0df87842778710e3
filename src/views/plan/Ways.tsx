/** The ways of mending side by side: what each comes to on this bore, which one is advised and by which rules. */
import { useEffect, useMemo, useRef } from 'react';
import { absentWords, type WayRow, wayRows } from '../../figures/wayTable.ts';
import { adviceWords } from '../../figures/wayWords.ts';
import { answerFor } from '../../store/aside.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';
import { useShop } from '../../store/useShop.ts';
import { takeWay, useWays, wantWays } from '../../store/ways.ts';
import { Words } from '../parts/Words.tsx';
import { useSize } from '../useSize.ts';
import { ToolsAtHand } from './ToolsAtHand.tsx';
import { WayCards } from './WayCards.tsx';
import { WayDetail } from './WayDetail.tsx';
import { WayFigures } from './WayFigures.tsx';
import { WayRules } from './WayRules.tsx';
import { WayTable } from './WayTable.tsx';
import type { Worked } from './worked.ts';
import './sideBySide.css';
import './ways.css';

/** From this width on, CSS pixels, the ways stand side by side in a table. */
const TABLE_FROM = 440;

export default function Ways({ bench }: { readonly bench: Worked }) {
  const { job, bore, survey } = bench;
  const shop = useShop((state) => state.shop);
  const settled = useEvaluation((state) => state.settled && state.of === job);
  const state = useWays();
  useEffect(() => {
    // What is at hand is part of the question.
    if (settled && shop !== undefined) wantWays({ job, bore, survey });
  }, [settled, job, bore, survey, shop]);
  const ways = answerFor(state, bore, survey);
  const rows = useMemo(() => ways && wayRows(ways, job.units), [ways, job.units]);
  const root = useRef<HTMLDivElement>(null);
  const { width } = useSize(root);
  const choose = ({ name }: WayRow) => takeWay(bench, name);
  const chosen = bore.decisions.way ?? 'undecided';
  const row = rows?.find(({ name }) => name === chosen) ?? rows?.find(isAdvised);
  // What stands in the way of heat is said with its questions, where they are asked.
  const asked = chosen === 'squeeze' || chosen === 'weld';
  const stops = ways?.stops.filter(({ closes }) => closes === 'all' || !asked) ?? [];
  const absent = ways === null ? '' : absentWords(ways, job.units);
  const List = width >= TABLE_FROM ? WayTable : WayCards;
  return (
    <div className="ways-of-mending" ref={root}>
      {ways === null || rows === null ? (
        <p className="soft">Working out the ways of mending…</p>
      ) : (
        <>
          <p className="way-advice">
            <Words text={adviceWords(ways)} />
          </p>
          {stops.map(({ says, whom }) => (
            <p key={says} className="stop">
              {says} Ask {whom}.
            </p>
          ))}
          {width > 0 && <List rows={rows} chosen={chosen} units={job.units} onChoose={choose} />}
          {absent !== '' && <p className="soft">{absent}</p>}
          {row !== undefined && <WayDetail bench={bench} row={row} onChoose={choose} />}
          <ToolsAtHand />
          <WayRules bench={bench} ways={ways} />
          <WayFigures bench={bench} ways={ways} />
        </>
      )}
    </div>
  );
}

const isAdvised = ({ verdict }: WayRow) => verdict === 'advised';
