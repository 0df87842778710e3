/** Why a way is advised: every rule with what it is on this bore; its limit is changed where it stands. */
import { RULES } from '../../figures/wayNames.ts';
import { isShare, ruleFigure } from '../../figures/wayWords.ts';
import { setDecision, setWayFigure, setWayShare } from '../../job/edits.ts';
import { mayBeNone, readPercent, usualWayFigure, usualWayShare } from '../../job/wayFigures.ts';
import { useJob } from '../../store/useJob.ts';
import type { useWays } from '../../store/ways.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { Words } from '../parts/Words.tsx';
import type { Worked } from './worked.ts';

type Ways = NonNullable<ReturnType<typeof useWays.getState>['shown']>;
type Check = Ways['advice']['checks'][number];

interface Props {
  readonly bench: Worked;
  readonly ways: Ways;
}

const CRACKS = [
  { value: 'open', text: 'not been looked for yet' },
  { value: 'none', text: 'been looked for and none found' },
  { value: 'seen', text: 'been seen' },
] as const;

export function WayRules({ bench, ways }: Props) {
  const { bore } = bench;
  const edit = useJob((state) => state.edit);
  const wall = ways.advice.ways.find(({ name }) => name === (ways.advice.advised ?? 'leave'))?.wall;
  const checks = wall === undefined ? ways.advice.checks : [...ways.advice.checks, wall];
  return (
    <>
      <h4>Why this advice</h4>
      <ul className="way-rules">
        {checks.map((check) => (
          <Rule key={check.rule} bench={bench} ways={ways} check={check} />
        ))}
        <li>
          Cracks, with it clean and cold, have{' '}
          <Choice
            label="Cracks"
            value={bore.decisions.crack ?? 'open'}
            options={CRACKS}
            onChoose={(crack) =>
              edit((now) =>
                setDecision(now, bore.id, { crack: crack === 'open' ? undefined : crack }),
              )
            }
          />
          .
        </li>
      </ul>
      <p className="soft">
        {checks.some(({ rule }) => rule === 'offShare')
          ? 'A bore off the line of the others decides first; else the first rule after it that is met, from the top. '
          : 'The first rule that is met decides, from the top. '}
        The limits are starting values by judgement: the figure of the machine’s maker comes before
        them.
      </p>
    </>
  );
}

function Rule({ bench, ways, check }: Props & { readonly check: Check }) {
  const { job } = bench;
  const [before, after] = RULES[check.rule];
  const here = ruleFigure(check, ways, job.units);
  return (
    <li data-met={check.met}>
      <Words text={before} /> <Limit bench={bench} rule={check.rule} />
      <Words text={after} />: here <span className="number">{here}</span>,{' '}
      <b>{Number.isNaN(check.figure) ? 'not known' : check.met ? 'met' : 'missed'}</b>.
    </li>
  );
}

function Limit({
  bench: { job, bore },
  rule,
}: {
  readonly bench: Worked;
  readonly rule: Check['rule'];
}) {
  const edit = useJob((state) => state.edit);
  const label = RULES[rule].join(' ');
  if (isShare(rule)) {
    const typed = bore.decisions.wayShares?.[rule];
    const wrong = typed !== undefined && Number.isNaN(readPercent(typed));
    return (
      <>
        <Field
          label={label}
          value={typed ?? usualWayShare(rule)}
          usual={typed === undefined}
          keys="decimal"
          fault={
            wrong
              ? `“${typed}” is no share from 0 to 100 %; ${usualWayShare(rule)} % counts until then`
              : null
          }
          onEnter={(text) => edit((now) => setWayShare(now, bore.id, rule, text))}
        />{' '}
        %
      </>
    );
  }
  return (
    <LengthField
      label={label}
      typed={bore.decisions.wayFigures?.[rule]}
      usual={usualWayFigure(rule, job.units)}
      units={job.units}
      least={mayBeNone(rule) ? 'none' : 'above none'}
      onEnter={(typed) => edit((now) => setWayFigure(now, bore.id, rule, typed))}
    />
  );
}
