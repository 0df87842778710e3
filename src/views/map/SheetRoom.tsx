/** Room for the flat sheets, as large as the drawing leaves it, and the choice of pages where not all are seen. */
import { type ReactNode, useRef } from 'react';
import { grownBy } from '../../figures/colour.ts';
import { Grown } from '../parts/Grown.tsx';
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
  const size = useSize(room);
  const grown = grownBy(sheet.theme);
  const names = pagesFor(size.width / grown, size.height / grown);
  return (
    <div className="drawing-map">
      {!small && (names.length > 0 || foot !== null) && (
        <div className="drawing-strip">
          {names.length > 0 && <Pages names={names} {...pages} />}
          {foot}
        </div>
      )}
      <div className="sheet-room" ref={room}>
        {size.width > 0 && size.height > 0 && (
          <Grown theme={sheet.theme} {...size}>
            {(width, height) => (
              <Sheet {...sheet} page={pages.page} width={width} height={height} />
            )}
          </Grown>
        )}
      </div>
    </div>
  );
}
