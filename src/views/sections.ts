/** The sections of the notebook, in the order of the work. */
import type { SectionName } from '../store/session.ts';

export const SECTIONS: readonly { readonly name: SectionName; readonly title: string }[] = [
  { name: 'measure', title: 'Measure' },
  { name: 'read', title: 'Read' },
  { name: 'plan', title: 'Plan' },
  { name: 'fit', title: 'Fit' },
  { name: 'show', title: 'Show' },
];
