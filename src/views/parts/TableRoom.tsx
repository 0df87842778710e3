/** Room for a table that may be wider than the page: moved sideways by finger, or by keys once it has the focus. */
import type { ReactNode } from 'react';

interface Props {
  readonly label: string;
  readonly children: ReactNode;
}

export function TableRoom({ label, children }: Props) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved sideways by keys
    <section className="table-room" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
