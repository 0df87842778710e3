/** Which stretches of the pin run, and in what; the rest is left alone. */
import { addLand, removeLand, setLand } from '../../job/edits.ts';
import type { Land } from '../../job/schema.ts';
import { attempt, sentence } from '../../store/attempt.ts';
import { say } from '../../store/page.ts';
import { tellTakenOut } from '../../store/takeOut.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { Worked } from './worked.ts';

const FACES = [
  { value: 'A', text: 'face A' },
  { value: 'B', text: 'face B' },
] as const;

export function PinLands({ bench }: { readonly bench: Worked }) {
  const { job, bore } = bench;
  const lands = bore.lands ?? [];
  const add = () => {
    const empty = { text: '', unit: job.units };
    const name = `Stretch ${lands.length + 1}`;
    const why = attempt((now) =>
      addLand(now, bore.id, { name, face: 'A', from: empty, to: empty }),
    );
    if (why !== null) say({ tone: 'fault', text: sentence(why) });
  };
  return (
    <>
      {lands.map((land) => (
        <OneLand key={land.id} bench={bench} land={land} />
      ))}
      <p className="facts">
        {lands.length === 0 ? 'All of it counts as running. ' : 'What lies between is left alone. '}
        <button type="button" className="link-button" onClick={add}>
          add a running stretch
        </button>
      </p>
    </>
  );
}

function OneLand({ bench: { job, bore }, land }: { readonly bench: Worked; readonly land: Land }) {
  const edit = useJob((state) => state.edit);
  const change = (part: Parameters<typeof setLand>[3]) =>
    edit((now) => setLand(now, bore.id, land.id, part));
  const holes = job.features.filter(({ kind }) => kind === 'bore' || kind === 'bushing-inside');
  const options = [
    { value: '', text: 'a hole not named' },
    ...holes.map(({ id, name }) => ({ value: id, text: name })),
  ];
  const depth = (end: 'from' | 'to') => ({
    typed: land[end].text.trim() === '' ? undefined : land[end],
    units: job.units,
    onEnter: (typed: Land['from'] | undefined) =>
      change({ [end]: typed ?? { text: '', unit: job.units } }),
  });
  return (
    <p className="facts">
      <Field
        label="Name of this stretch"
        kind="words"
        value={land.name}
        onEnter={(name) => change({ name })}
      />{' '}
      runs from <LengthField label={`${land.name} begins`} {...depth('from')} /> to{' '}
      <LengthField label={`${land.name} ends`} {...depth('to')} /> deep from{' '}
      <Choice
        label={`Face that the depths of ${land.name} are taken from`}
        value={land.face}
        options={FACES}
        onChoose={(face) => change({ face })}
      />
      , in{' '}
      <Choice
        label={`What ${land.name} runs in`}
        value={land.runsIn ?? ''}
        options={options}
        onChoose={(runsIn) => change({ runsIn: runsIn === '' ? undefined : runsIn })}
      />
      ;{' '}
      <button
        type="button"
        className="link-button"
        aria-label={`take it out: ${land.name}`}
        onClick={() => {
          edit((now) => removeLand(now, bore.id, land.id));
          tellTakenOut(`“${land.name}” no longer counts as running.`);
        }}
      >
        take it out
      </button>
      .
    </p>
  );
}
