/** Sheets of paper, mm. */
export type Paper = 'letter' | 'a4';
export const PAPERS: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> =
  {
    letter: { width: 215.9, height: 279.4 },
    a4: { width: 210, height: 297 },
  };
