/** Where weld is to go on, or is still missing, as a map: hatched as everywhere where it is not well known. */
import { useMemo } from 'react';
import { weldMap } from '../../figures/weldMap.ts';
import { MapFigure } from './MapFigure.tsx';
import type { PartProps } from './partProps.ts';

interface Props extends PartProps {
  readonly stage: 'as-found' | 'built-up';
}

export function WeldMap({ bench, found, stage }: Props) {
  const { job, boreSeen, surveySeen } = bench;
  const map = useMemo(
    () => weldMap(surveySeen, boreSeen.facts, found.weld, job.units),
    [surveySeen, boreSeen, found.weld, job.units],
  );
  if (found.weld.low.length === 0) return null;
  return (
    <MapFigure map={map}>
      {stage === 'built-up'
        ? 'Still too low to clean up: how much more weld it takes'
        : 'How thick weld is to go on'}
      , per side, {job.units === 'in' ? 'in thou' : 'in 0.01 mm'}; plus is missing. Seen from face
      A, rim on top.
    </MapFigure>
  );
}
