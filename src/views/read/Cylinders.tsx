/** The cylinders through the whole measured depth, each with its give-or-take. All across. */
import { useEffect, useRef, useState } from 'react';
import type { Plugs } from '../../bore/types.ts';
import { cylinderHead, cylinderRows, cylinderWords } from '../../figures/plugWords.ts';
import { answerFor } from '../../store/aside.ts';
import { useCylinders, wantCylinders } from '../../store/cylinders.ts';
import { useEvaluation } from '../../store/useEvaluation.ts';
import { useRested } from '../../store/useRested.ts';
import { TableRoom } from '../parts/TableRoom.tsx';
import { Words } from '../parts/Words.tsx';
import type { Worked } from '../plan/worked.ts';
import './cylinders.css';

interface CylindersProps {
  readonly bench: Worked;
  readonly plugs: Plugs;
}

export default function Cylinders({ bench, plugs }: CylindersProps) {
  const { units } = bench.job;
  const root = useRef<HTMLDivElement>(null);
  useAsked(bench, root);
  const gives = answerFor(useCylinders(), bench.bore, bench.survey);
  const seen = bench.surveySeen.surface?.seenLobes ?? [];
  return (
    <div className="cylinders" ref={root}>
      <TableRoom label="Straight through the whole depth">
        <table className="sections">
          <caption>
            {cylinderHead(plugs, units)}: sizes in {units === 'in' ? 'inches' : 'millimetres'},
            across.
          </caption>
          <thead>
            <tr>
              <td />
              <th scope="col">across</th>
              <th scope="col">
                <Words text="give or take" />
              </th>
            </tr>
          </thead>
          <tbody>
            {cylinderRows(plugs, gives, units).map(({ kind, name, means, across, give }) => (
              <tr key={kind}>
                <th scope="row">
                  <Words text={name} />
                  <small>{means}</small>
                </th>
                <td>{across}</td>
                <td>{give === '' ? '–' : give}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableRoom>
      {cylinderWords(plugs, gives, seen, units).map((text) => (
        <p key={text}>
          <Words text={text} />
        </p>
      ))}
    </div>
  );
}

/** Asks how well they are known once they are looked at, the hand rests and all is worked out. */
function useAsked(bench: Worked, root: { readonly current: Element | null }): void {
  const { job, bore, survey } = useRested(bench);
  const settled = useEvaluation((state) => state.settled && state.of === job);
  const [inSight, setInSight] = useState(false);
  useEffect(() => {
    if (root.current === null) return;
    const watch = new IntersectionObserver((all) =>
      setInSight(all.some(({ isIntersecting }) => isIntersecting)),
    );
    watch.observe(root.current);
    return () => watch.disconnect();
  }, [root]);
  useEffect(() => {
    if (settled && inSight) wantCylinders({ job, bore, survey });
  }, [settled, inSight, job, bore, survey]);
}
