/** A flat map as wide as the notebook, with what it shows below it. */
import { type ReactNode, useId, useRef } from 'react';
import { FlatMap } from '../../drawings/FlatMap.tsx';
import type { MapFigure as Drawn } from '../../figures/map.ts';
import { mapFrame } from '../../figures/mapFrame.ts';
import { useTheme } from '../../store/theme.ts';
import { Grown } from '../parts/Grown.tsx';
import { useSize } from '../useSize.ts';

const HEIGHT = 190;

interface Props {
  /** Null: there is no wall to draw. */
  readonly map: Drawn | null;
  /** What it shows. */
  readonly children: ReactNode;
}

export function MapFigure({ map, children }: Props) {
  const theme = useTheme((state) => state.shown);
  const root = useRef<HTMLElement>(null);
  const { width } = useSize(root);
  const id = useId();
  return (
    <figure className="pass-map" ref={root} style={{ minHeight: HEIGHT }}>
      {map !== null && width > 0 && (
        <Grown theme={theme} width={width} height={mapFrame(map, width, HEIGHT).height}>
          {(w, h) => <FlatMap map={map} frame={mapFrame(map, w, h)} theme={theme} id={id} />}
        </Grown>
      )}
      <figcaption className="soft">{children}</figcaption>
    </figure>
  );
}
