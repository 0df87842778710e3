/** What is decided of a pin, in one sentence: its finished size, clearance, skin and centres. */
import type { PinPlan } from '../../evaluate/pinTypes.ts';
import { setDecision, setDimension, setPin, setWayFigure } from '../../job/edits.ts';
import type { Typed } from '../../job/schema.ts';
import { inUnits } from '../../job/units.ts';
import { usualWayFigure } from '../../job/wayFigures.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { Worked } from './worked.ts';

const SKINS = [
  { value: 'unsaid', text: 'not said yet' },
  { value: 'plain', text: 'plain steel, a file bites' },
  { value: 'hardened', text: 'hardened, a file skates' },
  { value: 'plated', text: 'plated' },
] as const;

const CENTRES = [
  { value: 'kept', text: 'on the centres that it has' },
  { value: 'shifted', text: 'on centres shifted to where it cleans up best' },
] as const;

const CRACKS = [
  { value: 'unsaid', text: 'not looked for yet' },
  { value: 'none', text: 'looked for, none seen' },
  { value: 'seen', text: 'seen' },
] as const;

interface Props {
  readonly bench: Worked;
  readonly plan: PinPlan;
}

export function PinFields({ bench: { job, bore }, plan }: Props) {
  const edit = useJob((state) => state.edit);
  const { units } = job;
  const { id, decisions, wanted } = bore;
  const usual = (mm: number): Typed | undefined =>
    mm > 0 ? { text: inUnits(mm, units).toFixed(units === 'in' ? 4 : 3), unit: units } : undefined;
  const limit = (key: 'acceptLow' | 'turnDownMost', label: string) => (
    <LengthField
      label={label}
      typed={decisions.wayFigures?.[key]}
      usual={usualWayFigure(key, units)}
      units={units}
      onEnter={(typed) => edit((now) => setWayFigure(now, id, key, typed))}
    />
  );
  return (
    <>
      <p className="facts">
        It is made to{' '}
        <LengthField
          label="Finished size of the pin, across"
          typed={decisions.target}
          usual={usual(plan.finished.mm)}
          units={units}
          onEnter={(typed) => edit((now) => setDimension(now, id, 'target', typed))}
        />{' '}
        across, to run with{' '}
        <LengthField
          label="Running clearance, across"
          typed={wanted.clearance}
          usual={usual(plan.clearance)}
          units={units}
          onEnter={(typed) => edit((now) => setDimension(now, id, 'clearance', typed))}
        />{' '}
        of clearance across. Its skin is{' '}
        <Choice
          label="Skin of the pin"
          value={decisions.pin?.skin ?? 'unsaid'}
          options={SKINS}
          onChoose={(skin) =>
            edit((now) => setPin(now, id, 'skin', skin === 'unsaid' ? undefined : skin))
          }
        />
        ; cracks are{' '}
        <Choice
          label="Cracks in the pin"
          value={decisions.crack ?? 'unsaid'}
          options={CRACKS}
          onChoose={(crack) =>
            edit((now) => setDecision(now, id, { crack: crack === 'unsaid' ? undefined : crack }))
          }
        />
        . It is turned{' '}
        <Choice
          label="Centres it is turned on"
          value={plan.chosen}
          options={CENTRES}
          onChoose={(centres) => edit((now) => setPin(now, id, 'centres', centres))}
        />
        .
      </p>
      <p className="facts soft">
        Rules of the advice: it may stay short by{' '}
        {limit('acceptLow', 'What may stay short, per side')} per side, and be turned down by{' '}
        {limit('turnDownMost', 'Most that is turned off its size, across')} across
        {plan.ways.length > 0 && (
          <>
            , to{' '}
            <LengthField
              label="Size to turn it down to, across"
              typed={decisions.pin?.smaller}
              usual={usual(plan.ways.find(({ name }) => name === 'turn-down')?.size ?? Number.NaN)}
              units={units}
              onEnter={(typed) => edit((now) => setPin(now, id, 'smaller', typed))}
            />{' '}
            across
          </>
        )}
        .
      </p>
    </>
  );
}
