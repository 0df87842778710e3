/** The metal off, pass by pass: tool, what came off before, each pass with its gate, what stays, the finish. */
import { useEffect, useRef } from 'react';
import { StageChart } from '../../drawings/StageChart.tsx';
import type { Passes as Found } from '../../evaluate/passes.ts';
import {
  finishWords,
  GRINDING_CAUTIONS,
  isFinished,
  LATER,
  leftWords,
  noPassWords,
} from '../../figures/passWords.ts';
import { stageChart } from '../../figures/stageChart.ts';
import { pastWords, workedWords } from '../../figures/workedWords.ts';
import { withRate } from '../../job/tools.ts';
import { answerFor } from '../../store/aside.ts';
import { lookAtPass, usePasses, wantPasses } from '../../store/passes.ts';
import { shopStore } from '../../store/shop.ts';
import { useTheme } from '../../store/theme.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';
import { useShop } from '../../store/useShop.ts';
import { Words } from '../parts/Words.tsx';
import { useSize } from '../useSize.ts';
import { PassLine } from './PassLine.tsx';
import { ToolLine } from './ToolLine.tsx';
import { usePastNotice } from './usePastNotice.ts';
import type { Worked } from './worked.ts';
import './passes.css';

export default function Passes({ bench }: { readonly bench: Worked }) {
  const { job, bore, survey } = bench;
  const settled = useEvaluation((state) => state.settled && state.of === job);
  const shop = useShop((state) => state.shop);
  const state = usePasses();
  useEffect(() => {
    if (settled) wantPasses({ job, bore, survey });
  }, [settled, job, bore, survey, shop]);
  const found = answerFor(state, bore, survey);
  usePastNotice(bench, found?.past ?? null);
  return (
    <section className="passes" aria-labelledby="passes-head">
      <h3 id="passes-head">Passes</h3>
      {found === null ? (
        <p className="soft">Working out the passes…</p>
      ) : (
        <>
          <Before bench={bench} passes={found} />
          <ToolLine bench={bench} passes={found} />
          <List bench={bench} passes={found} chosen={state.pass} />
          <After bench={bench} passes={found} />
        </>
      )}
    </section>
  );
}

interface PartProps {
  readonly bench: Worked;
  readonly passes: Found;
}

/** What the pass before this survey did: past the target first, then what came off. */
function Before({ bench: { job, bore, boreSeen }, passes }: PartProps) {
  const { past, worked } = passes;
  const words = past && pastWords(past, boreSeen.facts, job.units);
  const perPass = worked?.off.perPass ?? Number.NaN;
  return (
    <>
      {words !== null && (
        <div className="stop" role="status">
          <p>{words.head}</p>
          <p>What is still possible:</p>
          <ul>
            {words.ways.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </div>
      )}
      {workedWords(passes, job.units).map((text) => (
        <p key={text}>
          <Words text={text} />
        </p>
      ))}
      {perPass > 0 && (
        <button
          type="button"
          className="link-button"
          onClick={() =>
            shopStore.getState().change((shop) => withRate(shop, bore.decisions, perPass))
          }
        >
          count this pass into the rate of this hand
        </button>
      )}
    </>
  );
}

function List({ bench, passes, chosen }: PartProps & { readonly chosen: number }) {
  const { passes: all } = passes.plan;
  const none = noPassWords(passes.plan);
  if (none !== '') return <p>{none}</p>;
  const shown = Math.min(chosen, all.length - 1);
  return (
    <ol className="pass-list">
      {all.map((pass, at) => (
        <PassLine
          key={at}
          {...{ bench, pass }}
          number={passes.done + at + 1}
          chosen={at === shown}
          onChoose={() => lookAtPass(at)}
          nextOf={at === 0 ? passes : null}
        />
      ))}
    </ol>
  );
}

function After({ bench: { job }, passes }: PartProps) {
  const { plan } = passes;
  const theme = useTheme((state) => state.shown);
  const root = useRef<HTMLDivElement>(null);
  const { width } = useSize(root);
  const chart = stageChart(passes, job.units);
  return (
    <>
      {plan.passes.length > 1 && <p className="soft">{LATER}</p>}
      {plan.left.length > 0 && (
        <ul className="cautions">
          {plan.left.map((one, i) => (
            <li key={i}>
              <Words text={leftWords(one, passes, job.units)} />
            </li>
          ))}
        </ul>
      )}
      {isFinished(passes) && (
        <p>
          <Words text={finishWords(passes, job.units)} />
        </p>
      )}
      <div className="stage-chart" ref={root}>
        {chart !== null && width > 0 && <StageChart figure={chart} width={width} theme={theme} />}
      </div>
      {plan.passes.length > 0 && (
        <ul className="cautions">
          {GRINDING_CAUTIONS.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
    </>
  );
}
