/** The reading table on the bench, for views. */
import { useSession } from './session.ts';
import { type Laid, tableOf } from './tables.ts';
import { useJob } from './useJob.ts';

export function useTable(): Laid | null {
  const bore = useSession((session) => session.bore);
  const survey = useSession((session) => session.survey);
  return useJob(({ job }) => tableOf(job, bore, survey));
}
