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

/** Its first letter large, as at the beginning of a sentence. */
export function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
