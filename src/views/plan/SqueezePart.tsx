/** A squeeze with heat: where it can end, how it is set up, and what to measure when it is cold. */
import { SqueezeAcross, SqueezeAlong } from '../../drawings/SqueezeSetup.tsx';
import { nearHour } from '../../figures/nearClock.ts';
import { NO_SQUEEZE, type Squeeze, squeezeWords } from '../../figures/squeezeWords.ts';
import { setMending } from '../../job/edits.ts';
import { USUAL_HEAT, USUAL_YIELD } from '../../job/mendingFacts.ts';
import { formatDepth } from '../../job/units.ts';
import { useTheme } from '../../store/theme.ts';
import { useJob } from '../../store/useJob.ts';
import { Closing } from './ClosingTable.tsx';
import { Cold } from './ColdTable.tsx';
import { HeatLog } from './HeatLog.tsx';
import { HotGate } from './HotGate.tsx';
import { PlainNumber, WayLength } from './mendingFields.tsx';
import type { PartProps } from './partProps.ts';
import { Said } from './Said.tsx';

export function SqueezePart({ bench, found }: PartProps) {
  const { job, surveySeen } = bench;
  const { squeeze } = found;
  if (squeeze === null) {
    return (
      <>
        <p>{NO_SQUEEZE}</p>
        <Given bench={bench} found={found} />
        <HeatLog bench={bench} found={found} />
      </>
    );
  }
  const words = squeezeWords(squeeze, found, surveySeen, job.units);
  return (
    <>
      <Said lines={words.ends} />
      <Given bench={bench} found={found} />
      <Closing depths={words.depths} units={job.units} />
      <HotGate bench={bench} way="squeeze">
        <Setup bench={bench} squeeze={squeeze} />
        <Said lines={words.steps} steps />
        <Cold words={words.cold} units={job.units} />
      </HotGate>
      <HeatLog bench={bench} found={found} />
    </>
  );
}

function Given({ bench, found }: PartProps) {
  const edit = useJob((state) => state.edit);
  const { bore, job } = bench;
  const { squeeze = {} } = bore.decisions;
  const fahrenheit = squeeze.heat ? squeeze.heat.unit === 'F' : job.units === 'in';
  const usual = String(fahrenheit ? Math.round(USUAL_HEAT * 1.8 + 32) : USUAL_HEAT);
  return (
    <p className="facts">
      Taken: the largest place is to end{' '}
      <WayLength bench={bench} of="squeezeUnder" label="Largest place under the target, across" />{' '}
      across under the target; the mean draws in by{' '}
      <WayLength bench={bench} of="heatLeast" label="Mean draws in with a heat, least, across" /> to{' '}
      <WayLength bench={bench} of="heatMost" label="Mean draws in with a heat, most, across" />{' '}
      across with a heat; squeezed at{' '}
      <PlainNumber
        label="Heat of the metal while it is squeezed"
        text={squeeze.heat?.text}
        usual={usual}
        onEnter={(text) =>
          edit((now) =>
            setMending(
              now,
              bore.id,
              'squeeze',
              'heat',
              text === undefined ? undefined : { text, unit: fahrenheit ? 'F' : 'C' },
            ),
          )
        }
      />{' '}
      °{fahrenheit ? 'F' : 'C'}
      {found.facts.squeeze.heat.from === 'typed' ? '' : ' (usual)'}; strength of the cold steel{' '}
      <PlainNumber
        label="Yield strength of the steel, cold, MPa"
        text={squeeze.yield}
        usual={String(USUAL_YIELD)}
        onEnter={(text) => edit((now) => setMending(now, bore.id, 'squeeze', 'yield', text))}
      />{' '}
      MPa.
    </p>
  );
}

function Setup({
  bench: { job, boreSeen },
  squeeze,
}: {
  readonly bench: PartProps['bench'];
  readonly squeeze: Squeeze;
}) {
  const theme = useTheme((state) => state.shown);
  const { plan, cold } = squeeze;
  const at = (turn: number) => nearHour(plan.jaws + turn);
  const deep = (z: number) => formatDepth(z, job.units);
  return (
    <div className="squeeze-setup">
      <figure>
        <SqueezeAcross
          jaws={plan.jaws}
          jawsAt={[at(0), at(Math.PI)]}
          heatAt={[at(Math.PI / 2), at(-Math.PI / 2)]}
          theme={theme}
        />
        <figcaption>
          Looking in at face A: jaws across the long way, heat on the two sides between. Dashed:
          round.
        </figcaption>
      </figure>
      <figure>
        <SqueezeAlong
          length={boreSeen.facts.length.mm}
          grip={plan.grip}
          gripText={{ from: deep(plan.grip.from), to: deep(plan.grip.to) }}
          measured={[...new Set(cold.map(({ z }) => z))]}
          theme={theme}
        />
        <figcaption>
          Cut along the bore, face A on the left: grip and heat this stretch only. Dotted: measure
          here when it is cold.
        </figcaption>
      </figure>
    </div>
  );
}
