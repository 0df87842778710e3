/** Asks for the fit while it is laid over the drawing; apart, so that nothing else is drawn anew while one types. */
import type { Job } from '../../job/schema.ts';
import { useAskFit } from '../../store/useFitOf.ts';
import { useJob } from '../../store/useJob.ts';

interface Props {
  /** Ids. */
  readonly bore: string;
  readonly survey: string;
}

export function AskFit(props: Props) {
  const job = useJob((state) => state.job);
  return job === null ? null : <Asking {...props} job={job} />;
}

function Asking({ job, bore, survey }: Props & { readonly job: Job }) {
  useAskFit(job, bore, survey);
  return null;
}
