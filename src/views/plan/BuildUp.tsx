/** How metal is moved or added: squeezing with heat, shims, weld, rim washers. Each folded until it is chosen or wanted. */
import { type ReactNode, useEffect, useState } from 'react';
import type { BuildUp as BuildUpFound } from '../../evaluate/buildUp.ts';
import { answerFor } from '../../store/aside.ts';
import { useBuildUp, wantBuildUp } from '../../store/buildUp.ts';
import { usePasses } from '../../store/passes.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';
import { useShop } from '../../store/useShop.ts';
import { PrintOn } from '../parts/PrintOn.tsx';
import { BenchPages } from './BenchPages.tsx';
import { RimPart } from './RimPart.tsx';
import { ShimPart } from './ShimPart.tsx';
import { SqueezePart } from './SqueezePart.tsx';
import { WeldPart } from './WeldPart.tsx';
import type { Worked } from './worked.ts';
import './buildUp.css';

const PARTS = [
  { way: 'squeeze', title: 'Squeeze with heat', Part: SqueezePart },
  { way: 'shim', title: 'Shims', Part: ShimPart },
  { way: 'weld', title: 'Weld', Part: WeldPart },
  { way: 'rim', title: 'Worn rim faces', Part: RimPart },
] as const;

export default function BuildUp({ bench }: { readonly bench: Worked }) {
  const { job, bore, survey } = bench;
  const { way } = bore.decisions;
  const chosen = way === 'squeeze' || way === 'shim' || way === 'weld';
  const [opened, setOpened] = useState(false);
  const wanted = chosen || opened || (bore.rim ?? []).length > 0;
  const settled = useEvaluation((state) => state.settled && state.of === job);
  const shop = useShop((state) => state.shop);
  // What the shop has decides about shims and springback.
  useEffect(() => {
    if (wanted && settled) wantBuildUp({ job, bore, survey });
  }, [wanted, settled, job, bore, survey, shop]);
  const found = answerFor(useBuildUp(), bore, survey);
  return (
    <>
      <h3>How it is done</h3>
      {PARTS.map(({ way: part, title, Part }) => (
        <Fold key={part} title={title} open={part === way} onOpen={() => setOpened(true)}>
          {found === null ? (
            <p className="soft">Working it out…</p>
          ) : (
            <Part bench={bench} found={found} />
          )}
        </Fold>
      ))}
      <OnPaper bench={bench} found={found} ready={!wanted || found !== null} />
    </>
  );
}

interface PaperProps {
  readonly bench: Worked;
  readonly found: BuildUpFound | null;
  /** False while what is wanted on the page is being worked out. */
  readonly ready: boolean;
}

function OnPaper({ bench, found, ready }: PaperProps) {
  const state = usePasses();
  const passes = answerFor(state, bench.bore, bench.survey);
  if (!ready || passes === null) return null;
  return (
    <p className="facts">
      Print the whole plan for the bench, map, zones and how it is done{' '}
      <PrintOn units={bench.job.units}>
        {(paper) => <BenchPages {...{ bench, passes, found, paper }} />}
      </PrintOn>
    </p>
  );
}

interface FoldProps {
  readonly title: string;
  readonly open: boolean;
  onOpen(): void;
  readonly children: ReactNode;
}

/** What is folded away is not drawn. */
function Fold({ title, open, onOpen, children }: FoldProps) {
  const [shown, setShown] = useState(open);
  return (
    <details
      className="way-fold"
      open={open}
      onToggle={(event) => {
        setShown(event.currentTarget.open);
        if (event.currentTarget.open) onOpen();
      }}
    >
      <summary>{title}</summary>
      {(shown || open) && <div className="way-fold-in">{children}</div>}
    </details>
  );
}
