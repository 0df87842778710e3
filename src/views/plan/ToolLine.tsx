/** What it is ground with: every figure edited where it stands. */
import type { Passes } from '../../evaluate/passes.ts';
import { toolWords } from '../../figures/passWords.ts';
import { setDecision } from '../../job/edits.ts';
import { lengthFault } from '../../job/lengthFault.ts';
import { ToolKind, type Typed, type Unit } from '../../job/schema.ts';
import { TOOL_KINDS, type ToolFigure } from '../../job/tools.ts';
import { formatPerSide, showTyped } from '../../job/units.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { Words } from '../parts/Words.tsx';
import type { Worked } from './worked.ts';

const KINDS = ToolKind.options.map((value) => {
  const { name } = TOOL_KINDS[value];
  return { value, text: `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}` };
});

interface Props {
  readonly bench: Worked;
  readonly passes: Passes;
}

type Key = 'diameter' | 'width' | 'bite' | 'slope';

export function ToolLine({ bench: { job, bore, surveySeen }, passes }: Props) {
  const { tool } = passes;
  const { units } = job;
  const edit = useJob((state) => state.edit);
  const change = (grinding: Partial<NonNullable<typeof bore.decisions.grinding>>) =>
    edit((now) => {
      const stated = now.features.find(({ id }) => id === bore.id)?.decisions.grinding;
      return setDecision(now, bore.id, { grinding: { ...stated, ...grinding } });
    });
  const fine: Unit = units === 'in' ? 'thou' : 'mm';
  const field = (key: Key, label: string, figure: ToolFigure, unit: Unit) => (
    <ToolField
      label={label}
      figure={figure}
      stated={bore.decisions.grinding?.[key]}
      unit={unit}
      onEnter={(typed) => change({ [key]: typed })}
    />
  );
  return (
    <>
      <p className="facts">
        With{' '}
        <Choice
          label="Grinding tool"
          value={tool.kind}
          options={KINDS}
          onChoose={(kind) =>
            change({ kind, diameter: undefined, width: undefined, bite: undefined })
          }
        />
        {tool.rigid && (
          <>
            , {field('diameter', 'Diameter of the tool', tool.diameter, units)} across and{' '}
            {field('width', 'Width of the tool along the bore', tool.width, units)} wide
          </>
        )}
        , at most {field('bite', 'Most that one pass takes, per side', tool.bite, fine)} per side in
        one pass; run out no steeper than {field('slope', 'Steepest run-out', tool.slope, fine)}{' '}
        {units === 'in' ? 'an inch' : 'a mm'} along the wall.
      </p>
      <p className="soft">
        <Words text={toolWords(passes, surveySeen.target?.diameter ?? Number.NaN)} /> Bite and
        run-out are judgement until your own passes say better.
        {tool.rate !== null &&
          ` This hand takes about ${formatPerSide(tool.rate.perPass, units)} in a pass with it (${tool.rate.passes} counted).`}
      </p>
    </>
  );
}

interface FieldProps {
  readonly label: string;
  readonly figure: ToolFigure;
  /** As typed, whether it can be used or not. */
  readonly stated: Typed | undefined;
  readonly unit: Unit;
  onEnter(typed: Typed | undefined): void;
}

/** A bare number counts in `unit`; what was typed in another says so. */
function ToolField({ label, figure, stated, unit, onEnter }: FieldProps) {
  const { from } = figure;
  const typed = stated ?? figure.typed;
  const text =
    typed.unit === unit ? typed.text.trim() : showTyped(typed, unit === 'mm' ? 'mm' : 'in');
  const own = typed.unit === unit || text === typed.text.trim();
  return (
    <span className="length-field">
      <Field
        label={label}
        value={text}
        usual={stated === undefined}
        fault={from === 'typed' ? null : lengthFault(stated, 'above none', figure.typed)}
        keys={unit === 'in' ? 'text' : 'decimal'}
        onEnter={(next) => {
          if (next !== text) onEnter(next === '' ? undefined : { text: next, unit });
        }}
      />
      {own && ` ${unit}`}
    </span>
  );
}
