/** The seconds that are left once the two touch, what helps, and what to do when it stops half-way. */
import { useId, useRef } from 'react';
import { GapClockChart } from '../../drawings/GapClockChart.tsx';
import { clockWords } from '../../figures/clockWords.ts';
import { gapClock } from '../../figures/gapClock.ts';
import { slipShort } from '../../figures/slipShort.ts';
import { setHeat } from '../../job/edits.ts';
import { HEAT_RULES, heatCautions, hotWork } from '../../job/safety.ts';
import { useTheme } from '../../store/theme.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Said } from '../plan/Said.tsx';
import { useSize } from '../useSize.ts';
import type { FitProps } from './fitProps.ts';
import { PlainFigure } from './heatFields.tsx';

const STOPS = [
  { value: 'eye', text: 'by eye' },
  { value: 'collar', text: 'by a stop' },
] as const;

export function ClockPart(props: FitProps) {
  const { bench, one } = props;
  const { safety, units } = bench.job;
  const { open } = hotWork(safety);
  const words = clockWords(one.clock, one.heat, one.seated, units);
  if (slipShort(one.heat, units, open).is === 'waits') {
    return <p className="soft">The seconds are told once the questions about heat are answered.</p>;
  }
  return (
    <div className="heat-part">
      <Said lines={[...words.missing, ...words.says]} />
      {one.clock !== null && (
        <>
          <Picture {...props} />
          {props.found.bushings[0] === one && <Given {...props} open={open} />}
          <p>What helps:</p>
          <Said lines={words.helps} />
          <p>When it stops half-way:</p>
          <Said lines={open ? words.stuck : words.stuck.slice(0, 1)} />
          <ul className="cautions">
            {(open ? [...heatCautions(safety, 'fit'), HEAT_RULES] : [HEAT_RULES]).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

function Picture({ bench: { job }, one: { clock } }: FitProps) {
  const theme = useTheme((state) => state.shown);
  const root = useRef<HTMLElement>(null);
  const { width } = useSize(root);
  const id = useId();
  return (
    <figure ref={root}>
      {clock !== null && width > 0 && (
        <GapClockChart
          figure={gapClock(clock, job.units)}
          width={Math.min(width, 520)}
          theme={theme}
          id={id}
        />
      )}
      <figcaption>Room from the moment they touch; hatched: its give-or-take.</figcaption>
    </figure>
  );
}

interface GivenProps extends FitProps {
  /** Whether steps with heat may be told. */
  readonly open: boolean;
}

function Given({ bench, one: { heat }, open }: GivenProps) {
  const edit = useJob((state) => state.edit);
  return (
    <p className="facts">
      Counted with <PlainFigure bench={bench} of="slide" label="Seconds to push it home" /> seconds
      to push it home, its depth found{' '}
      <Choice
        label="How the depth is found"
        value={heat.facts.stop}
        options={STOPS}
        onChoose={(stop) => edit((now) => setHeat(now, bench.bore.id, 'stop', stop))}
      />
      {heat.facts.stop === 'eye' && (
        <>
          {' '}
          in <PlainFigure bench={bench} of="find" label="Seconds to find the depth" /> seconds
        </>
      )}
      ; <PlainFigure bench={bench} of="film" label="Heat lost to the air, W/m²K" /> W/m²K to the air
      (still air 2 to 25),{' '}
      <PlainFigure bench={bench} of="contact" label="Heat across between the two, W/m²K" /> W/m²K
      between the two (left out: through the air between them; metal lightly touching 2000 to 10
      000)
      {open && (
        <>
          ; a flame that brings{' '}
          <PlainFigure bench={bench} of="flame" label="Power of the flame, kW" /> kW into the boss
          for <PlainFigure bench={bench} of="flameSeconds" label="Seconds of flame" /> seconds
        </>
      )}
      .
    </p>
  );
}
