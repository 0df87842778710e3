/** What the ways of mending are worked out with: each figure is changed where it stands, and all of them follow. */

import { defaultPressFit } from '../../job/defaults.ts';
import { setWanted, setWayFigure } from '../../job/edits.ts';
import type { WayFigure } from '../../job/schema.ts';
import { formatLength } from '../../job/units.ts';
import { mayBeNone, usualWayFigure } from '../../job/wayFigures.ts';
import { useJob } from '../../store/useJob.ts';
import type { useWays } from '../../store/ways.ts';
import { LengthField } from '../parts/LengthField.tsx';
import type { Worked } from './worked.ts';

interface Props {
  readonly bench: Worked;
  readonly ways: NonNullable<ReturnType<typeof useWays.getState>['shown']>;
}

export function WayFigures({ bench, ways }: Props) {
  const { job, bore } = bench;
  const edit = useJob((state) => state.edit);
  const figure = (key: WayFigure, label: string) => (
    <LengthField
      label={label}
      typed={bore.decisions.wayFigures?.[key]}
      usual={usualWayFigure(key, job.units)}
      units={job.units}
      least={mayBeNone(key) ? 'none' : 'above none'}
      onEnter={(typed) => edit((now) => setWayFigure(now, bore.id, key, typed))}
    />
  );
  const stock = ways.figures.stock.map((mm) => formatLength(mm, job.units)).join(', ');
  return (
    <>
      <h4>Worked out with</h4>
      <p className="way-figures">
        A press fit of{' '}
        <LengthField
          label="Press fit of the ways of mending, across"
          typed={bore.wanted.pressFit}
          usual={defaultPressFit(job.units)}
          units={job.units}
          onEnter={(typed) => edit((now) => setWanted(now, bore.id, 'pressFit', typed))}
        />{' '}
        across. A squeeze that ends{' '}
        {figure('squeezeUnder', 'A squeeze ends under the target by, across')} across under the
        target at the largest place; one heat closes{' '}
        {figure('heatLeast', 'One heat closes at least, across')} to{' '}
        {figure('heatMost', 'One heat closes at most, across')} across. Shims all round of at least{' '}
        {figure('shimLeast', 'Least thickness of a shim, per side')} per side, in no more than{' '}
        {ways.figures.shimLayers} layers of {stock}. A larger bushing, and a bored hole, on steps of{' '}
        {figure('oversizeStep', 'Steps of a larger bushing, across')} across. A sleeve with at least{' '}
        {figure('sleeveWall', 'Least wall of a sleeve, per side')} of wall per side. Weld laid{' '}
        {figure('weldAllowance', 'Weld over the finished size, per side')} per side over the
        finished size, to be cut again.
      </p>
    </>
  );
}
