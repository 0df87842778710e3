/** Where weld is to go on, or is still missing, as a map: hatched as everywhere where it is not well known. */
import { useId, useMemo, useRef } from 'react';
import { FlatMap } from '../../drawings/FlatMap.tsx';
import { mapFrame } from '../../figures/mapFrame.ts';
import { weldMap } from '../../figures/weldMap.ts';
import { useTheme } from '../../store/theme.ts';
import { Grown } from '../parts/Grown.tsx';
import { useSize } from '../useSize.ts';
import type { PartProps } from './partProps.ts';

const HEIGHT = 190;

interface Props extends PartProps {
  readonly stage: 'as-found' | 'built-up';
}

export function WeldMap({ bench, found, stage }: Props) {
  const { job, boreSeen, surveySeen } = bench;
  const theme = useTheme((state) => state.shown);
  const root = useRef<HTMLElement>(null);
  const { width } = useSize(root);
  const id = useId();
  const map = useMemo(
    () => weldMap(surveySeen, boreSeen.facts, found.weld, job.units),
    [surveySeen, boreSeen, found.weld, job.units],
  );
  if (found.weld.low.length === 0) return null;
  return (
    <figure className="pass-map" ref={root} style={{ minHeight: HEIGHT }}>
      {map !== null && width > 0 && (
        <Grown theme={theme} width={width} height={mapFrame(map, width, HEIGHT).height}>
          {(w, h) => <FlatMap map={map} frame={mapFrame(map, w, h)} theme={theme} id={id} />}
        </Grown>
      )}
      <figcaption className="soft">
        {stage === 'built-up'
          ? 'Still too low to clean up: how much more weld it takes'
          : 'How thick weld is to go on'}
        , per side, {job.units === 'in' ? 'in thou' : 'in 0.01 mm'}; plus is missing. Seen from face
        A, rim on top.
      </figcaption>
    </figure>
  );
}
