/** How the shape between the readings is filled in, and the two figures of it that can be stated instead. */
import type { Smoothness } from '../../bore/types.ts';
import { filledWords } from '../../figures/filledWords.ts';
import { setDecision } from '../../job/edits.ts';
import type { Decisions, Typed } from '../../job/schema.ts';
import type { Bench } from '../../store/bench.ts';
import { useJob } from '../../store/useJob.ts';
import { LengthField } from '../parts/LengthField.tsx';

interface FilledInProps {
  readonly bench: Bench;
  readonly smoothness: Smoothness;
}

type Between = NonNullable<Decisions['between']>;

export function FilledIn({ bench: { job, bore }, smoothness }: FilledInProps) {
  const edit = useJob((state) => state.edit);
  const { units } = job;
  const said = filledWords(smoothness, units);
  const set = (key: keyof Between, typed: Typed | undefined) => {
    const { [key]: _, ...rest } = bore.decisions.between ?? {};
    const between = typed === undefined ? rest : { ...rest, [key]: typed };
    const none = Object.keys(between).length === 0;
    edit((now) => setDecision(now, bore.id, { between: none ? undefined : between }));
  };
  return (
    <p className="facts filled-in">
      How the shape between the readings is filled in: smooth to about{' '}
      <LengthField
        label="Depth over which the shape keeps its likeness"
        typed={bore.decisions.between?.smooth}
        usual={said.smooth}
        units={units}
        onEnter={(typed) => set('smooth', typed)}
      />{' '}
      along the depth ({said.smoothFrom}); local dents of about{' '}
      <LengthField
        label="Local dents expected, per side, one standard deviation"
        typed={bore.decisions.between?.dents}
        usual={said.dents}
        units={units}
        onEnter={(typed) => set('dents', typed)}
      />{' '}
      per side expected ({said.dentsFrom}); {said.gauges}. Empty a figure, and it is learned again.
    </p>
  );
}
