/** A bench whose bore and survey have been worked out: what the plan's parts need. */
import type { Bench } from '../../store/bench.ts';

export type Worked = Bench & {
  readonly boreSeen: NonNullable<Bench['boreSeen']>;
  readonly surveySeen: NonNullable<Bench['surveySeen']>;
};
