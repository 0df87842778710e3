/** What each step of the story is made of. */
export type Step = 'new' | 'worn' | 'work' | 'done';

/** One sentence to be read from afar, and what stands behind it. */
export interface Told {
  readonly say: string;
  readonly more: readonly string[];
}
