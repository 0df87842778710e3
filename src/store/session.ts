/** What the person is looking at: never saved with the job, never computed from it. */
import { create } from 'zustand';
import type { Unit } from '../job/schema.ts';

/** What the drawing shows: in at the rim, cut in half, or rolled flat. */
export type View = 'rim' | 'half' | 'flat';
/** Where the drawing is looked at from: radians to the right of straight in, and above it. */
export interface Turn {
  readonly azimuth: number;
  readonly elevation: number;
}
export type SectionName = 'measure' | 'read' | 'plan' | 'fit' | 'show';
/** What can be laid over the drawing. */
export type Overlay =
  | 'readings'
  | 'target'
  | 'metal-off'
  | 'low'
  | 'zones'
  | 'circles'
  | 'first-pass'
  | 'bushing'
  | 'pressure';
/** The four steps of the story that Show tells. */
export type StoryStep = 'new' | 'worn' | 'work' | 'done';
/** A place on the wall: radians clockwise from 12 seen from face A, mm from face A. */
export interface Place {
  readonly theta: number;
  readonly z: number;
}
/** A cell of the reading table: row counts depths, column counts clock positions, from 0. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}
/** Where Enter goes: round each depth (along the row), or down each clock position (along the column). */
export type Order = 'round' | 'down';

export interface Session {
  /** Index into the job's bores, pins and bushings, and into the surveys of that one. */
  readonly bore: number;
  readonly survey: number;
  /** Survey laid over the shown one as a ghost; null none. */
  readonly ghost: number | null;
  /** Share of the way from the shown survey to the ghost that the drawing shows. */
  readonly sweep: number;
  /** What the drawing shows of two stages: one on its way to the other, or the map of what changed. */
  readonly compared: 'sweep' | 'change';
  /** Overlays that were switched by hand; one that is not named goes with the section being read. */
  readonly overlays: Readonly<Partial<Record<Overlay, boolean>>>;
  /** Step of the story that the drawing shows; null: none was pointed at. */
  readonly story: StoryStep | null;
  readonly cursor: Place | null;
  /** 0 the hole, 1 the flat map. */
  readonly roll: number;
  /** Factor on deviations in the drawing; 1 is true size; null: chosen to read well. */
  readonly exaggeration: number | null;
  readonly view: View;
  /** Turned by hand; null: the view's own direction. */
  readonly turn: Turn | null;
  /** Clock position of the middle of the half that is taken off where the piece is cut in half, radians. */
  readonly away: number;
  /** Clock position of the cut line, radians; pi is 6 o'clock. */
  readonly cut: number;
  readonly section: SectionName;
  /** Cell that the next reading goes into. */
  readonly cell: Cell;
  readonly order: Order;
  /** What has been typed into that cell and not entered yet; null: nothing. */
  readonly draft: string | null;
  /** What typed readings are in; null: the job's units. */
  readonly unit: Unit | null;
  /** The page's own keypad comes up with the table; null: where fingers do the pointing. */
  readonly keypad: boolean | null;
  /** Folds that were opened or shut by hand, by their ids; one that is not named is as it first showed. */
  readonly folds: Readonly<Record<string, boolean>>;
  /** How far the notebook is scrolled, CSS pixels. */
  readonly scroll: number;
}

export interface SessionActions {
  look(change: Partial<Session>): void;
}

/** How a job is looked at when it is first put on the bench. */
export const FIRST_LOOK: Session = {
  bore: 0,
  survey: 0,
  ghost: null,
  sweep: 0,
  compared: 'sweep',
  overlays: {},
  story: null,
  cursor: null,
  roll: 0,
  exaggeration: null,
  view: 'rim',
  turn: null,
  away: Math.PI / 2,
  cut: Math.PI,
  section: 'measure',
  cell: { row: 0, column: 0 },
  order: 'round',
  draft: null,
  unit: null,
  keypad: null,
  folds: {},
  scroll: 0,
};

export const useSession = create<Session & SessionActions>()((set) => ({
  ...FIRST_LOOK,
  look: (change) => set(change),
}));

/** The session alone, without its actions: what is kept on the device. */
export function sessionNow(): Session {
  const { look: _, ...session } = useSession.getState();
  return session;
}
