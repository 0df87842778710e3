/** What every part of squeezing, shimming and welding is drawn from. */
import type { BuildUp } from '../../evaluate/buildUp.ts';
import type { Worked } from './worked.ts';

export interface PartProps {
  readonly bench: Worked;
  readonly found: BuildUp;
}
