/** Head of a page for the bench: what it is, of which bore, and from which face its clock is seen. */
import { today } from '../today.ts';
import type { Worked } from './worked.ts';

interface Props {
  readonly bench: Worked;
  readonly title: string;
}

export function PageHead({ bench: { job, bore, surveySeen }, title }: Props) {
  const where = [job.title, job.machine, bore.name].filter((text) => (text ?? '') !== '');
  return (
    <header>
      <h1>{title}</h1>
      <p>
        {where.join(' · ')}, from “{surveySeen.name}” <time>{today()}</time>
      </p>
      <p>
        <b>Clock as seen looking in at face A.</b> Depths from the rim of face A. All figures of the
        map are per side; minus comes off, plus is short.
      </p>
    </header>
  );
}
