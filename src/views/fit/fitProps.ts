/** What every part of the fit of one bushing is drawn from. */
import type { BushingFit, FitFound } from '../../evaluate/fit.ts';
import type { Worked } from '../plan/worked.ts';

export interface FitProps {
  readonly bench: Worked;
  readonly found: FitFound;
  readonly one: BushingFit;
}
