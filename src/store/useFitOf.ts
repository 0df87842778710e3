/** The fit of one survey, for views. */
import { useEffect } from 'react';
import type { FitAnswer } from '../evaluate/fit.ts';
import type { Job } from '../job/schema.ts';
import { useFit, wantFit } from './fit.ts';
import { useEvaluation } from './useEvaluation.ts';
import { useShop } from './useShop.ts';

/** Sees to it that it is there, or on its way, whenever the job has come to rest. */
export function useAskFit(job: Job, bore: string, survey: string): void {
  const settled = useEvaluation((state) => state.settled && state.of === job);
  const shop = useShop((state) => state.shop);
  // What the shop has decides about shims and so about the wall.
  useEffect(() => {
    if (settled) wantFit({ job, bore, survey });
  }, [settled, job, bore, survey, shop]);
}

interface Of {
  /** Ids. */
  readonly job: string | undefined;
  readonly bore: string;
  readonly survey: string;
}

/** Null where none is there, or where it is not wanted: then nothing is drawn anew as it comes. */
export function useFitOf({ job, bore, survey }: Of, wanted = true): FitAnswer | null {
  return useFit(({ of, shown }) =>
    wanted && of?.job.id === job && of?.bore === bore && of.survey === survey ? shown : null,
  );
}
