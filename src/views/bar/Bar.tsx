/** The bar on top: the job's title, which bore, its stages, a step back and forth, and the menu. */
import { memo } from 'react';
import { rename, renameFeature } from '../../job/edits.ts';
import type { Bench } from '../../store/bench.ts';
import { useSession } from '../../store/session.ts';
import { useTypedBench } from '../../store/useBench.ts';
import { useJob } from '../../store/useJob.ts';
import { useRested } from '../../store/useRested.ts';
import { Choice } from '../parts/Choice.tsx';
import { Disclosure } from '../parts/Disclosure.tsx';
import { Field } from '../parts/Field.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useDraft } from '../parts/useDraft.ts';
import { Menu } from './Menu.tsx';
import { Stages } from './Stages.tsx';

export function Bar() {
  return <Shown bench={useRested(useTypedBench())} />;
}

const Shown = memo(function Shown({ bench }: { readonly bench: Bench | null }) {
  return (
    <header className="bar">
      {bench !== null && <Title title={bench.job.title} />}
      {bench !== null && <BoreChoice bench={bench} />}
      {bench !== null && <Stages bench={bench} />}
      <div className="bar-tools">
        <Steps />
        <Disclosure label="Menu" buttonClass="tool-button" button={<Icon name="menu" />}>
          {(close) => <Menu close={close} />}
        </Disclosure>
      </div>
    </header>
  );
});

/** The title is as long as it is, so it may take a second line where the page is narrow. */
function Title({ title }: { readonly title: string }) {
  const edit = useJob((state) => state.edit);
  const { draft, shown, setDraft, enter, onKeyDown } = useDraft(title, (text) =>
    edit((job) => rename(job, text)),
  );
  return (
    <h1>
      <textarea
        className="field"
        aria-label="Title of the job"
        rows={1}
        spellCheck={false}
        placeholder="Untitled job"
        data-typing={draft !== null}
        value={shown}
        onChange={(event) => setDraft(event.target.value.replace(/\s+/g, ' '))}
        onFocus={(event) => event.target.select()}
        onBlur={enter}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.preventDefault();
          onKeyDown(event);
        }}
      />
    </h1>
  );
}

function BoreChoice({ bench }: { readonly bench: Bench }) {
  const look = useSession((session) => session.look);
  const edit = useJob((state) => state.edit);
  const { bores, bore } = bench;
  if (bores.length === 1) {
    return (
      <p className="bar-bore">
        <Field
          label="Name of the bore"
          kind="words"
          value={bore.name}
          placeholder="Bore"
          onEnter={(name) => edit((job) => renameFeature(job, bore.id, name))}
        />
      </p>
    );
  }
  return (
    <p className="bar-bore">
      <Choice
        label="Bore, pin or bushing"
        value={bore.id}
        options={bores.map(({ id, name }) => ({ value: id, text: name }))}
        onChoose={(id) =>
          look({ bore: bores.findIndex((one) => one.id === id), survey: 0, draft: null })
        }
      />
    </p>
  );
}

function Steps() {
  const undo = useJob((state) => state.undo);
  const redo = useJob((state) => state.redo);
  const canUndo = useJob((state) => state.earlier.length > 0);
  const canRedo = useJob((state) => state.later.length > 0);
  return (
    <>
      <button
        type="button"
        className="tool-button"
        aria-label="Undo"
        title="Undo"
        disabled={!canUndo}
        onClick={undo}
      >
        <Icon name="undo" />
      </button>
      <button
        type="button"
        className="tool-button"
        aria-label="Redo"
        title="Redo"
        disabled={!canRedo}
        onClick={redo}
      >
        <Icon name="redo" />
      </button>
    </>
  );
}
