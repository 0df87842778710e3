/**
 * The flat drawings in the room that there is: the map with its profiles, the bore cut across at the cursor, and its
 * size along the depth; all three at once where that can be read, else a page at a time.
 */
import { useId, useMemo } from 'react';
import { Across } from './Across.tsx';
import { Along } from './Along.tsx';
import { MapView } from './MapView.tsx';
import { type Laid, laidOut, type Page } from './pages.ts';
import type { SheetProps } from './sheetProps.ts';

interface Props extends SheetProps {
  readonly page: Page;
}

export function Sheet({ page, ...props }: Props) {
  const { map, width, height, wall, theme, pressed } = props;
  const id = useId();
  const laid: Laid = useMemo(() => laidOut(map, page, width, height), [map, page, width, height]);
  return (
    <div className="sheets" data-flow={laid.flow}>
      {laid.map !== null && <MapView {...{ map, wall, theme, pressed }} sheet={laid.map} id={id} />}
      {laid.across !== null && <Across {...props} {...laid.across} />}
      {laid.along !== null && <Along {...props} {...laid.along} />}
    </div>
  );
}
