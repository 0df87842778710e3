/** Which of the flat drawings stand side by side, and how large each is. CSS pixels. */
import type { Frame } from '../../figures/contours.ts';
import { type MapSheet, mapSheet } from '../../figures/mapSheet.ts';

export type Page = 'map' | 'sections' | 'across' | 'along';

interface Room {
  readonly width: number;
  readonly height: number;
}

export interface Laid {
  /** Side by side, or the sections under the map. */
  readonly flow: 'row' | 'column';
  readonly map: MapSheet | null;
  readonly across: Room | null;
  readonly along: Room | null;
}

const GAP = 18;
/** From this width on all three stand side by side, and there is nothing to choose. */
const ALL = 1080;
/** The cut across stands beside the map from this width on. */
const BESIDE = 800;
/** Across and along share a page from this width on. */
const PAIR = 620;
/** As high as this, the sections stand under the map. */
const STACK = 520;
/** Widths that the cut across is drawn beside the map in, and the size along. */
const LEAST_ACROSS = 236;
const LEAST_ALONG = 310;
/** The size along goes under a narrow map from this height on. */
const LEAST_UNDER = 132;
/** From this height on that room is kept for it. */
const UNDER = 400;

export const PAGE_NAMES: Readonly<Record<Page, string>> = {
  map: 'Map',
  sections: 'Across and along',
  across: 'Across',
  along: 'Along',
};

/** Where a sheet takes the scene's place. */
export const SMALL_PAGES: readonly Page[] = ['map', 'across', 'along'];

/** The pages to choose from; none where all is seen at once. */
export function pagesFor(width: number, height: number): readonly Page[] {
  if (width >= ALL || (height >= STACK && width >= PAIR)) return [];
  return width >= PAIR ? ['map', 'sections'] : SMALL_PAGES;
}

/** @param map true size of the wall, mm: a deep bore's map is narrow, and leaves room beside it */
export function laidOut(map: Frame, page: Page, width: number, height: number): Laid {
  const pages = pagesFor(width, height);
  if (pages.length === 0 && width < ALL) return stacked(map, width, height);
  const none: Laid = { flow: 'row', map: null, across: null, along: null };
  if (pages.length === 0) {
    const across = Math.max(LEAST_ACROSS, Math.min(height - 50, 0.22 * width));
    const sheet = mapSheet(map, width - across - LEAST_ALONG - 2 * GAP, height);
    const along = width - sheet.width - across - 2 * GAP;
    return {
      ...none,
      map: sheet,
      across: { width: across, height },
      along: { width: along, height },
    };
  }
  const shown = pages.includes(page) ? page : page === 'map' ? 'map' : pages[1]!;
  if (shown === 'across') return { ...none, across: { width, height } };
  if (shown === 'along') return { ...none, along: { width, height } };
  if (shown === 'sections') return { ...none, ...pair(width, height) };
  const beside = width >= BESIDE ? LEAST_ACROSS + GAP : 0;
  const held = beside === 0 && height >= UNDER ? LEAST_UNDER + GAP : 0;
  const sheet = mapSheet(map, width - beside, height - held);
  const rest = width - sheet.width - GAP;
  if (rest >= LEAST_ACROSS) return { ...none, map: sheet, across: { width: rest, height } };
  const under = height - sheet.height - GAP;
  const along = under >= LEAST_UNDER ? { width, height: under } : null;
  return { ...none, flow: 'column', map: sheet, along };
}

function pair(width: number, height: number): Pick<Laid, 'across' | 'along'> {
  const across = Math.floor(Math.min(0.5 * width, height + 190));
  return { across: { width: across, height }, along: { width: width - across - GAP, height } };
}

/** The map over the two sections. */
function stacked(map: Frame, width: number, height: number): Laid {
  const high = Math.round(0.54 * height);
  const sheet = mapSheet(map, width, high);
  const rest = height - sheet.height - GAP;
  return { flow: 'column', map: sheet, ...pair(width, rest) };
}
