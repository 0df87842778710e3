/** How the keys behave: what a typed number means, where Enter goes, and what helps a hand that types. */
import { useSyncExternalStore } from 'react';
import type { Unit, Units } from '../../job/schema.ts';
import { useAwake } from '../../store/awake.ts';
import { useEntryWays, type Ways } from '../../store/entryWays.ts';
import { useSession } from '../../store/session.ts';
import type { Laid } from '../../store/tables.ts';
import { stemNow } from '../../store/typing.ts';
import { voice } from '../../store/voice.ts';
import { Choice } from '../parts/Choice.tsx';
import { keypadWanted } from './keypadWanted.ts';

const ORDERS = [
  { value: 'round', text: 'round each depth' },
  { value: 'down', text: 'down each clock position' },
] as const;

function unitOptions(units: Units): { value: Unit; text: string }[] {
  const inch = { value: 'in', text: 'inches' } as const;
  const mm = { value: 'mm', text: 'millimetres' } as const;
  const thou = { value: 'thou', text: 'thou over or under the new size' } as const;
  return units === 'in' ? [inch, thou, mm] : [mm, inch, thou];
}

export function TypedHow({ units, laid }: { readonly units: Units; readonly laid: Laid }) {
  const order = useSession((session) => session.order);
  const unit = useSession((session) => session.unit) ?? units;
  const keypad = useSession((session) => keypadWanted(session.keypad));
  const look = useSession((session) => session.look);
  return (
    <>
      <p className="facts">
        Typed in{' '}
        <Choice
          label="Readings are typed in"
          value={unit}
          options={unitOptions(units)}
          onChoose={(chosen) => look({ unit: chosen === units ? null : chosen })}
        />
        ; Enter goes{' '}
        <Choice
          label="Enter goes"
          value={order}
          options={ORDERS}
          onChoose={(chosen) => look({ order: chosen })}
        />
        .
      </p>
      <div className="ways">
        <Tick says="large keys on the screen" on={keypad} onTurn={(on) => look({ keypad: on })} />
        <WayTick way="lastDigits" says="only the last digits" />
        <WayTick way="spoken" says="say readings aloud" />
        <WayTick way="awake" says="keep the screen on" />
      </div>
      <LastDigitsSaid laid={laid} />
      <SpokenSaid />
      <AwakeSaid />
    </>
  );
}

interface TickProps {
  readonly says: string;
  readonly on: boolean;
  onTurn(on: boolean): void;
}

function Tick({ says, on, onTurn }: TickProps) {
  return (
    <label className="tick">
      <input type="checkbox" checked={on} onChange={({ target }) => onTurn(target.checked)} />
      {says}
    </label>
  );
}

function WayTick({ way, says }: { readonly way: keyof Ways; readonly says: string }) {
  const on = useEntryWays((ways) => ways[way]);
  const set = useEntryWays((ways) => ways.set);
  return <Tick says={says} on={on} onTurn={(turned) => set({ [way]: turned })} />;
}

/** What may be left out, by an example of this table's own. */
function LastDigitsSaid({ laid }: { readonly laid: Laid }) {
  const on = useEntryWays((ways) => ways.lastDigits);
  if (!on) return null;
  const stem = stemNow(laid);
  if (stem === null) {
    return (
      <p className="soft ways-said">
        Type the first reading whole, with all its decimals: after it the last digits will do.
      </p>
    );
  }
  const whole = stem.near.toFixed(stem.decimals).replace('.', stem.point);
  return (
    <p className="soft ways-said">
      Exactly {stem.digits} digits without a point are the last ones: {whole.slice(-stem.digits)} is{' '}
      {whole}. The large figure shows it before Enter takes it.
    </p>
  );
}

/** Only where it cannot be done: a voice that is there is heard. */
function SpokenSaid() {
  const on = useEntryWays((ways) => ways.spoken);
  const able = useSyncExternalStore(voice.follow, voice.able);
  if (!on || able) return null;
  return (
    <p className="soft ways-said" role="status">
      This browser has no voice here, so nothing is said aloud. The large figures under the table
      show the same.
    </p>
  );
}

const AWAKE_WORDS = {
  off: '',
  on: 'The screen is kept on while you type, and for five minutes after.',
  cannot: 'This browser cannot keep the screen on: set the device’s own screen time longer.',
  refused: 'The device did not allow the screen to be kept on (saving its battery, perhaps).',
} as const;

function AwakeSaid() {
  const on = useEntryWays((ways) => ways.awake);
  const state = useAwake((awake) => awake.state);
  return <p className="soft ways-said">{on ? AWAKE_WORDS[state] : ''}</p>;
}
