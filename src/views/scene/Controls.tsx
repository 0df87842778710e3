/** Under the drawing: roll it out, draw wear larger or smaller, and the three views. */
import type { ReactNode } from 'react';
import { type Exaggeration, factorFor } from '../../figures/exaggeration.ts';
import { type Session, useSession } from '../../store/session.ts';
import { type LaidOf, LaidOver } from './LaidOver.tsx';
import { factorWords, rollWords } from './words.ts';

interface Props {
  /** What the drawing is of. */
  readonly of: LaidOf;
  readonly exaggeration: Exaggeration;
  /** Little room: short words, and the factor from a list. */
  readonly small: boolean;
  /** The flat drawings take the scene's place where there is no room for both; null where there is. */
  readonly flat: {
    readonly shown: boolean;
    readonly show: (shown: boolean) => void;
    readonly pages: ReactNode;
  } | null;
}

const VIEWS = [
  { view: 'rim', name: 'Rim', short: 'Rim', roll: 0 },
  { view: 'half', name: 'Cut in half', short: 'Half', roll: 0 },
  { view: 'flat', name: 'Flat', short: 'Flat', roll: 1 },
] as const;

function isShown(session: Pick<Session, 'view' | 'roll'>, one: (typeof VIEWS)[number]): boolean {
  return session.view === one.view && session.roll === one.roll;
}

export function Controls({ of, exaggeration, small, flat }: Props) {
  return (
    <div className="drawing-controls">
      {flat?.shown ? flat.pages : <RollSlider />}
      {small && flat?.shown !== true && <LaidOver {...of} />}
      <Views small={small} flat={flat} />
      {small ? <FactorList of={exaggeration} /> : <FactorSlider of={exaggeration} />}
      {!small && <LaidOver {...of} />}
    </div>
  );
}

function RollSlider() {
  const roll = useSession((session) => (session.view === 'half' ? 0 : session.roll));
  const look = useSession((session) => session.look);
  return (
    <label className="drawing-slider roll-slider">
      <span>hole</span>
      <input
        type="range"
        min={0}
        max={1}
        step={0.01}
        value={roll}
        aria-label="Roll the bore out from hole to flat map"
        aria-valuetext={rollWords(roll)}
        onChange={(event) => {
          const next = Number(event.target.value);
          look({ roll: next, view: next >= 1 ? 'flat' : 'rim', turn: null });
        }}
      />
      <span>map</span>
    </label>
  );
}

function Views({ small, flat }: Pick<Props, 'small' | 'flat'>) {
  const view = useSession((session) => session.view);
  const roll = useSession((session) => session.roll);
  const away = useSession((session) => session.away);
  const look = useSession((session) => session.look);
  const flatShown = flat?.shown === true;
  return (
    <fieldset className="drawing-views" aria-label="View">
      {VIEWS.map((one) => {
        const shown = !flatShown && isShown({ view, roll }, one);
        const turnOver = one.view === 'half' && shown;
        return (
          <button
            key={one.view}
            type="button"
            className="plain-button"
            aria-pressed={shown}
            aria-label={turnOver ? 'The other half' : one.name}
            onClick={() => {
              flat?.show(false);
              const half = turnOver ? { away: (away + Math.PI) % (2 * Math.PI) } : {};
              look({ view: one.view, roll: one.roll, turn: null, ...half });
            }}
          >
            {turnOver ? (small ? 'Flip' : 'The other half') : small ? one.short : one.name}
          </button>
        );
      })}
      {flat !== null && (
        <button
          type="button"
          className="plain-button"
          aria-pressed={flat.shown}
          onClick={() => flat.show(!flat.shown)}
        >
          Map
        </button>
      )}
    </fieldset>
  );
}

function useFactor(of: Exaggeration) {
  const wanted = useSession((session) => session.exaggeration);
  const look = useSession((session) => session.look);
  return {
    factor: factorFor(wanted, of),
    choose: (factor: number) => look({ exaggeration: factor === of.chosen ? null : factor }),
  };
}

function FactorSlider({ of }: { readonly of: Exaggeration }) {
  const { factor, choose } = useFactor(of);
  return (
    <label className="drawing-slider">
      <span>wear</span>
      <input
        type="range"
        min={0}
        max={of.factors.length - 1}
        step={1}
        value={of.factors.indexOf(factor)}
        aria-label="How much larger wear is drawn than it is"
        aria-valuetext={factorWords(factor)}
        onChange={(event) => choose(of.factors[Number(event.target.value)] ?? 1)}
      />
      <span className="number factor">×{factor}</span>
    </label>
  );
}

function FactorList({ of }: { readonly of: Exaggeration }) {
  const { factor, choose } = useFactor(of);
  return (
    <label className="drawing-factor">
      <span className="aloud">How much larger wear is drawn than it is</span>
      <select value={factor} onChange={(event) => choose(Number(event.target.value))}>
        {of.factors.map((one) => (
          <option key={one} value={one}>
            wear ×{one}
          </option>
        ))}
      </select>
    </label>
  );
}
