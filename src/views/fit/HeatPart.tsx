/** Slipping the bushing in with heat and cold: what must be won, every way of winning it, and the one chosen. */
import { useRef } from 'react';
import { TemperStrip } from '../../drawings/TemperStrip.tsx';
import { degreesName } from '../../figures/degrees.ts';
import { type SlipWords, slipWords } from '../../figures/slipWords.ts';
import { temperStrip } from '../../figures/temperStrip.ts';
import { HEAT_RULES, heatCautions, hotWork } from '../../job/safety.ts';
import { useTheme } from '../../store/theme.ts';
import { FiguresTable } from '../parts/FiguresTable.tsx';
import { SafetyQuestions } from '../plan/SafetyQuestions.tsx';
import { Said } from '../plan/Said.tsx';
import { useSize } from '../useSize.ts';
import type { FitProps } from './fitProps.ts';
import { HeatGiven } from './HeatGiven.tsx';
import './heat.css';

export function HeatPart(props: FitProps) {
  const { bench, found, one } = props;
  const { job, bore } = bench;
  const words = slipWords(one, job.units);
  const work = hotWork(job.safety);
  // What a bore has once is asked once.
  const first = found.bushings[0] === one;
  // Where the plan itself takes heat the questions are asked there.
  const asked = bore.decisions.way === 'squeeze' || bore.decisions.way === 'weld';
  return (
    <section className="heat-part" aria-label={`Heat and cold for ${one.seated.name}`}>
      {words.wrong.map((line) => (
        <p key={line} className="stop">
          {line}
        </p>
      ))}
      <Said lines={words.needs} />
      {first ? (
        <HeatGiven {...props} />
      ) : (
        <p className="soft">
          Counted with the same figures as for {found.bushings[0]!.seated.name}.
        </p>
      )}
      {words.rows.length > 0 && <SlipTable words={words} units={job.units} open={work.open} />}
      {words.hot && !work.open ? (
        <p className="soft">
          No step with heat is shown before the questions on it are answered
          {asked ? ' under Plan' : ''}.
        </p>
      ) : (
        <>
          <Said lines={words.chosen} />
          {words.hot && <Strip {...props} />}
          <ul className="cautions">
            {[
              ...words.cautions,
              ...(words.hot ? [...heatCautions(job.safety, 'fit'), HEAT_RULES] : []),
            ].map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
      {first && !asked && <SafetyQuestions safety={job.safety} work={work} />}
    </section>
  );
}

interface TableProps {
  readonly words: SlipWords;
  readonly units: 'in' | 'mm';
  readonly open: boolean;
}

function SlipTable({ words, units, open }: TableProps) {
  const degree = degreesName(units);
  return (
    <FiguresTable
      label="Ways of slipping it in"
      caption={
        open
          ? `By how cold the bushing is: how warm the boss must be, ${degree}`
          : `How cold the bushing is, ${degree}`
      }
      className="slip-table"
      corner="bushing"
      heads={[
        'when it touches',
        `smaller by, ${units} across`,
        ...(open ? ['boss then', 'heated to', 'which is'] : []),
      ]}
      rows={words.rows.map(({ cold, short, entry, smaller, boss, off, verdict }) => ({
        key: cold,
        head: short,
        cells: [entry, smaller, ...(open ? [boss, off, verdict] : [])],
      }))}
    />
  );
}

function Strip({ bench: { job }, one: { heat } }: FitProps) {
  const theme = useTheme((state) => state.shown);
  const root = useRef<HTMLElement>(null);
  const { width } = useSize(root);
  const figure = temperStrip(heat, job.units);
  return (
    <figure ref={root}>
      {figure !== null && width > 0 && (
        <TemperStrip figure={figure} width={Math.min(width, 520)} theme={theme} />
      )}
      <figcaption>
        Colours of clean, bright steel after some minutes at a heat, each bar as long as tables
        differ. Below them there is no colour.
      </figcaption>
    </figure>
  );
}
