/** Room for the flat sheets, as large as the drawing leaves it, and the choice of pages where not all are seen. */
import { type ReactNode, useRef } from 'react';
import { useSize } from '../useSize.ts';
import { Pages } from './Pages.tsx';
import { type Page, pagesFor } from './pages.ts';
import { Sheet } from './Sheet.tsx';
import type { SheetProps } from './sheetProps.ts';

interface Props extends Omit<SheetProps, 'width' | 'height'> {
  readonly pages: { readonly page: Page; readonly onChoose: (page: Page) => void };
  /** Little room: the pages are chosen elsewhere. */
  readonly small: boolean;
  /** What stands in line with the pages. */
  readonly foot: ReactNode;
}

export function SheetRoom({ pages, small, foot, ...sheet }: Props) {
  const room = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(room);
  const names = pagesFor(width, height);
  return (
    <div className="drawing-map">
      {!small && (names.length > 0 || foot !== null) && (
        <div className="drawing-strip">
          {names.length > 0 && <Pages names={names} {...pages} />}
          {foot}
        </div>
      )}
      <div className="sheet-room" ref={room}>
        {width > 0 && height > 0 && (
          <Sheet {...sheet} page={pages.page} width={width} height={height} />
        )}
      </div>
    </div>
  );
}
