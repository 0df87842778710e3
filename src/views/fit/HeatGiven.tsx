/** What heat and cold are counted with: every figure editable, the usual one shown. */
import { degreesBare } from '../../figures/degrees.ts';
import { COLD_NAMES } from '../../figures/slipWords.ts';
import { setHeat } from '../../job/edits.ts';
import { USUAL_SHOP } from '../../job/heatFacts.ts';
import { Cold } from '../../job/heatSchema.ts';
import { inUnits } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { BossProbes } from './BossProbes.tsx';
import type { FitProps } from './fitProps.ts';
import { PlainFigure, WarmFigure } from './heatFields.tsx';

const COLDS = Cold.options.map((value) => ({ value, text: COLD_NAMES[value] }));

export function HeatGiven({ bench, one: { heat } }: FitProps) {
  const edit = useJob((state) => state.edit);
  const { job, bore } = bench;
  const { facts, chosen, limits, room } = heat;
  const given = bore.decisions.fit?.heat ?? {};
  const usual = (celsius: number) => degreesBare(celsius, job.units);
  const digits = job.units === 'in' ? 4 : 3;
  return (
    <>
      <p className="facts">
        Bushing{' '}
        <Choice
          label="Where the bushing comes from"
          value={facts.cold}
          options={COLDS}
          onChoose={(cold) => edit((now) => setHeat(now, bore.id, 'cold', cold))}
        />
        {facts.cold === 'own' && (
          <>
            {' '}
            at{' '}
            <WarmFigure
              bench={bench}
              of="bushing"
              label="Temperature of the bushing when it is taken out"
            />
          </>
        )}
        , boss at{' '}
        <WarmFigure
          bench={bench}
          of="boss"
          label="Temperature of the boss when the heat is taken away"
          {...(chosen ? { usual: usual(chosen.off) } : {})}
        />{' '}
        when the heat is taken away, at most{' '}
        <WarmFigure
          bench={bench}
          of="limit"
          label="Most that the boss may have"
          usual={usual(limits.boss)}
        />
        ; the bushing may warm to{' '}
        <WarmFigure
          bench={bench}
          of="bushingLimit"
          label="Most that the bushing may have"
          usual={usual(limits.bushing)}
        />
        . Air{' '}
        <WarmFigure
          bench={bench}
          of="shop"
          label="Temperature of the air"
          usual={usual(USUAL_SHOP)}
        />
        . Room at entry{' '}
        <LengthField
          label="Room at entry, across"
          typed={given.room}
          usual={{ text: inUnits(room, job.units).toFixed(digits), unit: job.units }}
          units={job.units}
          onEnter={(typed) => edit((now) => setHeat(now, bore.id, 'room', typed))}
        />{' '}
        across. <PlainFigure bench={bench} of="carry" label="Seconds from taking out to touching" />{' '}
        seconds from taking them out to touching.
      </p>
      <BossProbes bench={bench} />
    </>
  );
}
