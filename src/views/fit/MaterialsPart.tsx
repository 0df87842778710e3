/** The metals of the job: the figures of each with their sources, every one editable, and own entries. */
import { useState } from 'react';
import type { FitFound } from '../../evaluate/fit.ts';
import { METALS_SAID, type MetalRow, metalFaults, metalRows } from '../../figures/metalWords.ts';
import { addMaterial, removeMaterial, setMaterialFigure } from '../../job/materialEdits.ts';
import { sameName } from '../../job/materialFacts.ts';
import { attempt } from '../../store/attempt.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { PlainNumber } from '../plan/mendingFields.tsx';
import type { Worked } from '../plan/worked.ts';

interface Props {
  readonly bench: Worked;
  readonly found: FitFound;
}

export function MaterialsPart({ bench, found }: Props) {
  const { job } = bench;
  const edit = useJob((state) => state.edit);
  const [looked, look] = useState<string | null>(null);
  const first = found.bushings[0]?.press.boss.material.name;
  const shown =
    found.metals.find(({ material }) => material.name === looked) ??
    found.metals.find(({ material }) => material.name === first) ??
    found.metals[0]!;
  const { name } = shown.material;
  const own = name !== shown.metal;
  const entry = (job.materials ?? []).find((one) => sameName(one.name, name));
  return (
    <>
      <p className="facts">
        Figures of{' '}
        <Choice
          label="Metal whose figures are shown"
          value={name}
          options={found.metals.map(({ material }) => ({
            value: material.name,
            text: material.name,
          }))}
          onChoose={look}
        />
        {own && `, those of ${shown.metal} where you stated none`}.
      </p>
      <ul className="metal-figures">
        {metalRows(shown).map((row) => (
          <Figure
            key={row.figure}
            {...{ row, name }}
            text={entry?.[row.figure]}
            onEnter={(text) => edit((now) => setMaterialFigure(now, name, row.figure, text))}
          />
        ))}
      </ul>
      {metalFaults(shown).map((fault) => (
        <p key={fault} className="fault" role="status">
          {fault}
        </p>
      ))}
      {entry !== undefined && (
        <button
          type="button"
          className="plain-button"
          onClick={() => edit((now) => removeMaterial(now, name))}
        >
          {own ? `Take ${name} out` : `Usual figures of ${name} again`}
        </button>
      )}
      <AddMetal onAdded={look} />
      <p className="soft">{METALS_SAID}</p>
    </>
  );
}

interface FigureProps {
  readonly row: MetalRow;
  readonly name: string;
  readonly text: string | undefined;
  onEnter(text: string | undefined): void;
}

function Figure({ row, name, text, onEnter }: FigureProps) {
  return (
    <li>
      <span>
        {row.name}:{' '}
        <PlainNumber
          label={`${row.name} of ${name}${row.unit === '' ? '' : `, ${row.unit}`}`}
          text={text}
          usual={row.usual}
          onEnter={onEnter}
        />{' '}
        {row.unit}
      </span>
      <small>{row.source}</small>
    </li>
  );
}

function AddMetal({ onAdded }: { onAdded(name: string): void }) {
  const [fault, setFault] = useState<string | null>(null);
  return (
    <p className="facts">
      A metal of your own:{' '}
      <Field
        label="Name of a metal of your own"
        value=""
        placeholder="its name"
        kind="words"
        fault={fault}
        onEnter={(text) => {
          const name = text.trim();
          if (name === '') return;
          const why = attempt((now) => addMaterial(now, name));
          setFault(why);
          if (why === null) onAdded(name);
        }}
      />
    </p>
  );
}
