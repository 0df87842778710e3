/** Squeeze, shims or weld as they are done, on paper: only what the questions on heat allow. */
import { SkipOrder } from '../../drawings/SkipOrder.tsx';
import { SqueezeAcross } from '../../drawings/SqueezeSetup.tsx';
import { nearHour } from '../../figures/nearClock.ts';
import { rimWords } from '../../figures/rimWords.ts';
import { NO_SHIMS, shimWords } from '../../figures/shimWords.ts';
import { NO_SQUEEZE, squeezeWords } from '../../figures/squeezeWords.ts';
import { weldStage, weldWords } from '../../figures/weldWords.ts';
import { HEAT_RULES, heatCautions, hotWork } from '../../job/safety.ts';
import { Closing } from './ClosingTable.tsx';
import { Cold } from './ColdTable.tsx';
import type { PartProps } from './partProps.ts';
import { Strips } from './StripTable.tsx';

export function WayOnPaper({ bench, found }: PartProps) {
  const { way } = bench.bore.decisions;
  const rims = found.rims.flatMap((rim) => rimWords(rim, bench.job.units));
  return (
    <>
      {way === 'squeeze' && <SqueezeOnPaper bench={bench} found={found} />}
      {way === 'shim' && <ShimsOnPaper bench={bench} found={found} />}
      {way === 'weld' && <WeldOnPaper bench={bench} found={found} />}
      <Lines lines={rims} />
    </>
  );
}

function Lines({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

const SHUT = 'No step with heat is printed before the questions on it are answered.';

function Heat({ bench: { job } }: Pick<PartProps, 'bench'>) {
  return (
    <>
      <ul className="pass-page-cautions">
        {heatCautions(job.safety).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p>{HEAT_RULES}</p>
    </>
  );
}

function SqueezeOnPaper({ bench, found }: PartProps) {
  const { job, surveySeen } = bench;
  const { squeeze } = found;
  if (squeeze === null) return <p>{NO_SQUEEZE}</p>;
  const words = squeezeWords(squeeze, found, surveySeen, job.units);
  const { jaws } = squeeze.plan;
  const at = (turn: number) => nearHour(jaws + turn);
  return (
    <section>
      <h2>Squeeze with heat</h2>
      <Lines lines={words.ends} />
      <Closing depths={words.depths} units={job.units} />
      {!hotWork(job.safety).open ? (
        <p>{SHUT}</p>
      ) : (
        <>
          <div className="page-picture">
            <SqueezeAcross
              jaws={jaws}
              jawsAt={[at(0), at(Math.PI)]}
              heatAt={[at(Math.PI / 2), at(-Math.PI / 2)]}
              theme="sunlight"
            />
          </div>
          <Lines lines={words.steps} />
          <Cold words={words.cold} units={job.units} />
          <Heat bench={bench} />
        </>
      )}
    </section>
  );
}

function ShimsOnPaper({ bench: { job }, found }: PartProps) {
  if (found.shims === null) return <p>{NO_SHIMS}</p>;
  const words = shimWords(found.shims, found, job.units);
  return (
    <section>
      <h2>Shims</h2>
      <Lines lines={words.stack} />
      {words.strips.length > 0 && <Strips strips={words.strips} />}
      <Lines lines={[...words.rules, ...words.cautions]} />
    </section>
  );
}

function WeldOnPaper({ bench, found }: PartProps) {
  const { job, survey, surveySeen, boreSeen } = bench;
  const stage = weldStage(surveySeen, survey.stage);
  const words = weldWords(found, stage, boreSeen.facts.length.mm, job.units);
  return (
    <section>
      <h2>Weld</h2>
      <Lines lines={[...words.low, ...words.metal]} />
      {!hotWork(job.safety).open ? (
        <p>{SHUT}</p>
      ) : (
        <>
          <div className="page-picture">
            <SkipOrder order={found.weld.order} theme="sunlight" />
          </div>
          <Lines lines={words.steps} />
          <Heat bench={bench} />
        </>
      )}
    </section>
  );
}
