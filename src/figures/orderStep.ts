/** One step of the order of work. */
export interface Step {
  /** Its own name, by which it is ticked off. */
  readonly key: string;
  readonly says: string;
  readonly cautions: readonly string[];
}

export const step = (key: string, says: string, ...cautions: string[]): Step => ({
  key,
  says,
  cautions,
});
