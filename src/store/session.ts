/** What the person is looking at: never saved with the job, never computed from it. */
import { create } from 'zustand';

/** Where the drawing looks from. */
export type View = 'rim' | 'half' | 'flat' | 'free';
export type SectionName = 'measure' | 'read' | 'plan' | 'show';
/** A place on the wall: radians clockwise from 12 seen from face A, mm from face A. */
export interface Place {
  readonly theta: number;
  readonly z: number;
}

export interface Session {
  /** Index into the job's bores, and into that bore's surveys. */
  readonly bore: number;
  readonly survey: number;
  /** Survey laid over the shown one as a ghost; null none. */
  readonly ghost: number | null;
  readonly cursor: Place | null;
  /** 0 the hole, 1 the flat map. */
  readonly roll: number;
  /** Factor on deviations in the drawing; 1 is true size; null: chosen to read well. */
  readonly exaggeration: number | null;
  readonly view: View;
  /** Clock position of the cut line, radians; pi is 6 o'clock. */
  readonly cut: number;
  readonly section: SectionName;
}

export interface SessionActions {
  look(change: Partial<Session>): void;
}

export const useSession = create<Session & SessionActions>()((set) => ({
  bore: 0,
  survey: 0,
  ghost: null,
  cursor: null,
  roll: 0,
  exaggeration: null,
  view: 'rim',
  cut: Math.PI,
  section: 'measure',
  look: (change) => set(change),
}));
