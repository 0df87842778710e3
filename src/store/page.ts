/** What is open on the page just now: gone with a reload, and no part of any job. */
import { create } from 'zustand';

export interface NoticeAction {
  readonly label: string;
  act(): void;
}
/** One plain message at the top of the notebook; never a dialog in the way. */
export interface Notice {
  readonly tone: 'fault' | 'said';
  readonly text: string;
  /** Further sentences, one a line. */
  readonly more?: readonly string[];
  readonly actions?: readonly NoticeAction[];
}

export interface PageState {
  readonly notice: Notice | null;
  /** The questions of a new job stand in place of the notebook. */
  readonly newJob: boolean;
  readonly keypad: boolean;
  readonly drawingHidden: boolean;
  /** The table of readings that stand for many points is shown, not folded. */
  readonly pointsTable: boolean;
  /** Name of the wear pattern that is looked at instead of the notebook, '' for the first; null: none. */
  readonly gallery: string | null;
  /** What is seldom said of a survey is unfolded. */
  readonly moreAbout: boolean;
  change(part: Partial<Omit<PageState, 'change'>>): void;
}

export const usePage = create<PageState>()((set) => ({
  notice: null,
  newJob: false,
  keypad: false,
  drawingHidden: false,
  pointsTable: false,
  gallery: null,
  moreAbout: false,
  change: (part) => set(part),
}));

export function say(notice: Notice | null): void {
  usePage.getState().change({ notice });
}
