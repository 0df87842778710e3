/** Plan of a pin or shaft: size, what is short where it runs, weld and turning, its other ways, and what to guard. */
import { useId, useMemo, useRef } from 'react';
import { PinMap } from '../../drawings/PinMap.tsx';
import type { PinPlan } from '../../evaluate/pinTypes.ts';
import { PIN_MAP_WORDS, pinMap } from '../../figures/pinMap.ts';
import { pinWordGroups } from '../../figures/pinWords.ts';
import { pinAdvised } from '../../figures/pinWork.ts';
import type { Bench } from '../../store/bench.ts';
import { usePage } from '../../store/page.ts';
import { useTheme } from '../../store/theme.ts';
import { usePlanOfPin } from '../../store/usePlanOfPin.ts';
import { PrintOn } from '../parts/PrintOn.tsx';
import { useSize } from '../useSize.ts';
import { PinFields } from './PinFields.tsx';
import { PinGuard } from './PinGuard.tsx';
import { PinLands } from './PinLands.tsx';
import { PinPage } from './PinPage.tsx';
import { PinTables } from './PinTables.tsx';
import { PinWeld } from './PinWeld.tsx';
import { Said } from './Said.tsx';
import type { Worked } from './worked.ts';
import './ways.css';
import './buildUp.css';
import './pin.css';

export default function PinPart({ bench }: { readonly bench: Bench }) {
  const { boreSeen, surveySeen } = bench;
  const plan = usePlanOfPin(bench);
  if (boreSeen === null || surveySeen === null) return <p className="soft">Working it out…</p>;
  if (surveySeen.surface === null) {
    return <p className="soft">The plan follows the first readings that can be used.</p>;
  }
  if (plan === null) return <p className="soft">Working it out…</p>;
  return <Planned bench={{ ...bench, boreSeen, surveySeen }} plan={plan} />;
}

interface Props {
  readonly bench: Worked;
  readonly plan: PinPlan;
}

function Planned({ bench, plan }: Props) {
  const { units } = bench.job;
  const advised = pinAdvised(plan, units);
  // The drawing's room shows the same map while it is in sight.
  const alone = usePage((page) => page.drawingHidden);
  return (
    <div className="pin-plan">
      <PinFields bench={bench} plan={plan} />
      <PinLands bench={bench} />
      {advised !== null && <p className="way-advice">{advised}</p>}
      {alone && <MapFigure bench={bench} plan={plan} />}
      <PinTables plan={plan} units={units} />
      {pinWordGroups(plan, units).map(({ head, lines }) => (
        <section key={head}>
          <h3>{head}</h3>
          <Said lines={lines} />
        </section>
      ))}
      <PinWeld bench={bench} plan={plan} />
      <PinGuard bench={bench} />
      <p>
        Print this plan{' '}
        <PrintOn units={units}>
          {(paper) => <PinPage bench={bench} plan={plan} paper={paper} />}
        </PrintOn>
      </p>
    </div>
  );
}

/** Width to height of the map; a phone's is squarer. */
const SHAPE = { wide: 0.5, narrow: 0.8 } as const;

function MapFigure({ bench: { boreSeen, surveySeen, job }, plan }: Props) {
  const theme = useTheme(({ shown }) => shown);
  const room = useRef<HTMLElement>(null);
  const { width } = useSize(room);
  const id = useId();
  const map = useMemo(
    () => pinMap(surveySeen, boreSeen, plan, job.units),
    [surveySeen, boreSeen, plan, job.units],
  );
  const height = Math.round(width * (width < 500 ? SHAPE.narrow : SHAPE.wide));
  return (
    <figure className="pin-map" ref={room}>
      {map !== null && width > 0 && (
        <PinMap map={map} theme={theme} width={Math.floor(width)} height={height} id={id} />
      )}
      <figcaption className="soft">
        {PIN_MAP_WORDS}
        {map?.assumed != null && ` Assumed: ${map.assumed}.`}
      </figcaption>
    </figure>
  );
}
