/** Which side is worn was not measured: the plan says so, and asks. */
import { otherSides } from '../../figures/otherWords.ts';
import { setWornSide } from '../../job/edits.ts';
import { showOther } from '../../store/other.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import type { Worked } from './worked.ts';

const HOURS = Array.from({ length: 12 }, (_, at) => String(at === 0 ? 12 : at));

export function AssumedSide({ bench }: { readonly bench: Worked }) {
  const { bore, survey, boreSeen, surveySeen } = bench;
  const edit = useJob((state) => state.edit);
  const worn = survey.wornSide ?? '';
  const hours = HOURS.includes(worn) || worn === '' ? HOURS : [...HOURS, worn];
  return (
    <p className="assumed">
      <b>Assumed: {worn === '' ? 'both sides alike' : 'the side that you said'}.</b> Diameters
      cannot tell which side is worn. As you see it, the wear is{' '}
      <Choice
        label="Side that wore"
        value={worn}
        options={[
          { value: '', text: 'alike on both sides, or not known' },
          ...hours.map((hour) => ({ value: hour, text: `at ${hour} o’clock` })),
        ]}
        onChoose={(hour) => edit((now) => setWornSide(now, bore.id, survey.id, hour))}
      />
      {survey.plan.face === 'B' && ', on the clock as seen from face A: 3 from face B is 9 here'}.{' '}
      {otherSides(surveySeen, survey.wornSide, boreSeen.facts.load).map(({ wornSide, words }) => (
        <button
          key={wornSide}
          type="button"
          className="link-button"
          onClick={() => showOther({ bore: bore.id, survey: survey.id, wornSide })}
        >
          show it {words}
        </button>
      ))}{' '}
      Wall thickness at each clock hour, or an indicator swept round at three depths, would show it.
    </p>
  );
}
