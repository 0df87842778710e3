/** One sentence, its figure set apart so that it can be shown large. */
export interface Sentence {
  readonly before: string;
  readonly figure: string;
  readonly after: string;
}

export const said = (before: string, figure = '', after = ''): Sentence => ({
  before,
  figure,
  after,
});
