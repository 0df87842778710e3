/** What the readings of one set-up share, said where they are typed: the spindle of a sweep, or the boss of wall readings. */
import { useState } from 'react';
import {
  chooseSetup,
  newSetup,
  removeSetup,
  setGauge,
  setSetup,
  withSetup,
} from '../../job/edits.ts';
import type { Gauge, Job, Setup } from '../../job/schema.ts';
import { type SharedKind, setupInHand, sharesSetup, usualSetup } from '../../job/setups.ts';
import { gaugeOf } from '../../job/sizes.ts';
import { attempt } from '../../store/attempt.ts';
import type { Bench } from '../../store/bench.ts';
import { tellTakenOut } from '../../store/takeOut.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { GiveField } from '../parts/GiveField.tsx';
import { Words } from '../parts/Words.tsx';

export function SetupLine({ bench }: { readonly bench: Bench }) {
  const gauge = gaugeOf(bench.job.gauges, bench.survey.plan.gauge);
  if (gauge === undefined || !sharesSetup(gauge.kind)) return null;
  const setup = setupInHand(bench.survey, gauge.id);
  return (
    <>
      <SetupChoice key={setup?.id} bench={bench} gauge={gauge} setup={setup} />
      {gauge.kind === 'sweep' ? (
        <Spindle bench={bench} gauge={gauge} setup={setup} />
      ) : (
        <Boss bench={bench} setup={setup} />
      )}
    </>
  );
}

interface SetupProps {
  readonly bench: Bench;
  readonly setup: Setup | undefined;
}

const NEW = 'new';

/** Which spindle or boss the next readings belong to, its name, and how it goes. */
function SetupChoice({ bench, gauge, setup }: SetupProps & { readonly gauge: Gauge }) {
  const { bore, survey } = bench;
  const edit = useJob((state) => state.edit);
  const [why, setWhy] = useState<string | null>(null);
  const change = useChange(bench);
  const own = survey.setups.filter((one) => one.gauge === gauge.id);
  const options =
    own.length > 0
      ? own.map(({ id, name }) => ({ value: id, text: name }))
      : [{ value: '', text: gauge.kind === 'sweep' ? 'one spindle' : 'one boss' }];
  return (
    <p className="facts">
      <Words text="Set-up: " />
      <Choice
        label="Set-up that the next readings belong to"
        value={setup?.id ?? ''}
        options={[...options, { value: NEW, text: 'set up anew' }]}
        onChoose={(chosen) =>
          edit((now) =>
            chosen === NEW
              ? newSetup(now, bore.id, survey.id)
              : chooseSetup(now, bore.id, survey.id, chosen),
          )
        }
      />
      {setup !== undefined && (
        <>
          , called{' '}
          <Field
            label="Name of this set-up"
            kind="words"
            value={setup.name}
            onEnter={(name) => change({ name })}
          />
          ;{' '}
          <button
            type="button"
            className="link-button"
            onClick={() => {
              const refusal = attempt((now) => removeSetup(now, bore.id, survey.id, setup.id));
              setWhy(refusal);
              if (refusal === null) tellTakenOut(`“${setup.name}” is out of this survey.`);
            }}
          >
            take it out
          </button>
        </>
      )}
      . The table shows and takes the readings of this one.
      {why !== null && (
        <span className="fault" role="status">
          {' '}
          {why}
        </span>
      )}
    </p>
  );
}

/** Changes the set-up in hand; a first one is made where the readings name none yet. */
function useChange({ bore, survey }: Bench) {
  const edit = useJob((state) => state.edit);
  return (change: Parameters<typeof setSetup>[4]) =>
    edit((now: Job) => {
      const made = withSetup(now, bore.id, survey.id);
      const there = made.features
        .find(({ id }) => id === bore.id)
        ?.surveys.find(({ id }) => id === survey.id);
      const inHand = there && setupInHand(there, there.plan.gauge);
      return inHand === undefined ? made : setSetup(made, bore.id, survey.id, inHand.id, change);
    });
}

type FigureName = 'offset' | 'lean' | 'roundness';

/** One figure of the set-up as a give-or-take, and whether anyone stated it. */
function Give({
  bench,
  setup,
  kind,
  figure,
  label,
}: SetupProps & {
  readonly kind: SharedKind;
  readonly figure: FigureName;
  readonly label: string;
}) {
  const change = useChange(bench);
  return (
    <>
      <GiveField
        label={label}
        typed={setup?.[figure]}
        usualMm={usualSetup(kind, setup?.notKnown)[figure]}
        units={bench.job.units}
        onEnter={(typed) => change({ [figure]: typed })}
      />
      {setup?.[figure] === undefined && ' (usual)'}
    </>
  );
}

const STYLUS = [
  { value: 'kept', text: 'left as it was' },
  { value: 'anew', text: 'set anew' },
] as const;
const NEEDLE = [
  { value: 'larger', text: 'larger' },
  { value: 'smaller', text: 'smaller' },
] as const;

function Spindle({ bench, gauge, setup }: SetupProps & { readonly gauge: Gauge }) {
  const edit = useJob((state) => state.edit);
  const change = useChange(bench);
  const give = { bench, setup, kind: 'sweep' } as const;
  return (
    <p className="facts">
      The spindle runs square with the bore to within{' '}
      <Give {...give} figure="lean" label="How square the spindle is over the bore’s length" /> over
      its length, and within{' '}
      <Give {...give} figure="offset" label="How far the spindle stands off the bore’s middle" /> of
      its middle, nearly always. Between depths the stylus was{' '}
      <Choice
        label="Stylus between depths"
        value={setup?.resetEachDepth === true ? 'anew' : 'kept'}
        options={STYLUS}
        onChoose={(chosen) => change({ resetEachDepth: chosen === 'anew' })}
      />
      . A needle turning clockwise means that the hole is{' '}
      <Choice
        label="What a needle turning clockwise means"
        value={gauge.needle ?? 'larger'}
        options={NEEDLE}
        onChoose={(needle) => edit((now) => setGauge(now, gauge.id, { needle }))}
      />{' '}
      there.
    </p>
  );
}

const BOSS = [
  { value: 'true', text: 'made true' },
  { value: 'not-known', text: 'not known to be true' },
] as const;

function Boss({ bench, setup }: SetupProps) {
  const change = useChange(bench);
  const give = { bench, setup, kind: 'wall' } as const;
  return (
    <p className="facts">
      Outside, the boss is{' '}
      <Choice
        label="How the boss was made outside"
        value={setup?.notKnown === true ? 'not-known' : 'true'}
        options={BOSS}
        onChoose={(chosen) => change({ notKnown: chosen === 'not-known' })}
      />
      : round to within{' '}
      <Give {...give} figure="roundness" label="How round the boss is, per side" /> per side,
      concentric with the new bore to within{' '}
      <Give {...give} figure="offset" label="How concentric the boss is with the new bore" />, and
      straight along it to within{' '}
      <Give {...give} figure="lean" label="How straight the boss runs over the bore’s length" />{' '}
      over its length, nearly always.
    </p>
  );
}
